#include "ui/light/magnification_panel.hpp"

#include <cmath>

#include "base/text.hpp"
#include "scene/light/magnification_rows.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

void draw_magnification_panel(const Ui& ui) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float unit_room = grid(7);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    std::size_t number = 0;
    for (const ValueRow& row : magnification_rows(*ui.report)) {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        const float height = ImGui::GetTextLineHeight() + grid(2);
        const std::string id = "magnification/row/" + std::to_string(number++);
        ImGui::InvisibleButton(id.c_str(), {width, height});
        ui.describe(id, row.label, row.help);
        const float top = low.y + grid(1);
        const float value_right = low.x + width - unit_room;
        const std::string value = row.unit_leads() ? row.unit + row.value : typeset(row.value);
        const float label_room = value_right - low.x - text_width(value, TextFace::bold) - grid(2);
        text_at(list, {low.x, top}, shortened(row.label, label_room), colour(Tone::text_dim));
        text_ending_at(list, {value_right, top}, value, colour(Tone::text), TextFace::bold);
        if (!row.unit_leads())
            text_at(list, {value_right + grid(1), top}, row.unit, colour(Tone::text_dim));
        list.AddLine({low.x, low.y + height}, {low.x + width, low.y + height}, colour(Tone::line));
    }
    ImGui::PopStyleVar();
}

}  // namespace beamfork
