#include "ui/ways_to_focus/ways_to_focus_panel.hpp"

#include <string>

#include "document/edit.hpp"
#include "scene/ways_to_focus/ways_to_focus_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

void draw_way(const Ui& ui, const WayRow& row, std::size_t number) {
    const std::string id = "ways_to_focus/" + std::to_string(number);
    const float line = ImGui::GetTextLineHeight();
    const float indent = line + grid(2);
    const float button_room = text_width("Try it") + grid(6);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    draw_sign(*ImGui::GetWindowDrawList(), row.sign, {low.x + line / 2, low.y + line / 2},
              line * 0.75F, text_colour(row.role));
    const float room = width - indent - button_room;
    ImGui::BeginGroup();
    ImGui::Indent(indent);
    ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + room);
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(row.what.c_str());
    ImGui::PopFont();
    ImGui::TextUnformatted(folded(row.effect, room).c_str());
    ImGui::TextUnformatted(folded(row.light, room).c_str());
    ImGui::PushStyleColor(ImGuiCol_Text, colour(Tone::text_dim));
    ImGui::TextUnformatted(row.cost.c_str());
    ImGui::PopStyleColor();
    ImGui::PopTextWrapPos();
    ImGui::Unindent(indent);
    ImGui::EndGroup();
    ui.note(id, row.what, ways_to_focus_help());
    const ImVec2 below = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({low.x + width - button_room + grid(2), low.y});
    if (text_button(ui, id + "/try", "Try it",
                    "Changes the setup so. Undo (Ctrl+Z) brings it back as it was.")) {
        ui.edit(ReplaceSetup{setup_of_way(*ui.report, number), "Cure: " + row.what});
    }
    ImGui::SetCursorScreenPos({below.x, below.y + grid(1)});
    ImGui::Dummy({0, 0});
}

}  // namespace

void draw_ways_to_focus_panel(const Ui& ui) {
    wrapped_text(ways_to_focus_sentence(*ui.report), colour(Tone::text));
    const auto rows = ways_to_focus_rows(*ui.report);
    for (std::size_t i = 0; i < rows.size(); ++i)
        draw_way(ui, rows[i], i);
}

}  // namespace beamfork
