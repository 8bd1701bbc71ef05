#include "ui/light/light_at_stops_panel.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "scene/light/light_at_stops_rows.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/light/field_stop_picture.hpp"
#include "ui/light/light_plot.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string id_of(const EyeLightRows& eye) {
    return fmt::format("light_at_stops/{}", name_of(eye.eye));
}

// The round picture of the field stop with the eye's name below it, and the plot beside it.
void draw_eye(
    const Ui& ui, const LightRows& rows, const EyeLightRows& eye, const Area& area, float widest) {
    const float line = ImGui::GetTextLineHeight();
    const float side = std::min(widest, area.height - line - grid(1));
    ImGui::SetCursorScreenPos(area.corner());
    ImGui::InvisibleButton((id_of(eye) + "/picture").c_str(), {side, area.height});
    const std::string help =
        "The light on this field stop, as its eye sees it. " + eye.values.front().help;
    ui.describe(id_of(eye) + "/picture", eye.name, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 centre{area.left + side / 2, area.top + side / 2};
    draw_field_stop(list, *ui.report, eye.eye, centre, side / 2, eye.role);
    const bool both_fit = text_width("Right eye", TextFace::bold) <= side;
    const std::string name = both_fit ? eye.name : eye.name.substr(0, eye.name.find(' '));
    text_at(list, {centre.x - text_width(name, TextFace::bold) / 2, area.top + side + grid(1)},
            name, text_colour(eye.role), TextFace::bold);

    const Area plot{area.left + side + grid(2), area.top, area.width - side - grid(2), area.height};
    ImGui::SetCursorScreenPos(plot.corner());
    ImGui::InvisibleButton((id_of(eye) + "/plot").c_str(), plot.size());
    constexpr const char* plot_help =
        "Share of the objective's light over the field: its middle at the left, its edge at the "
        "right. Solid: the mean of all directions; dashed: the darkest. Above the line: what each "
        "opening takes.";
    ui.describe(id_of(eye) + "/plot", eye.name, plot_help);
    draw_light_plot(list, plot, rows, eye);
}

// A label, then a number for each eye under its picture's colour, then the unit.
void draw_value_line(const Ui& ui,
                     const std::string& id,
                     const ValueRow& left,
                     const ValueRow& right) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float line = ImGui::GetTextLineHeight();
    ImGui::InvisibleButton(id.c_str(), {width, line + grid(0.5F)});
    ui.describe(id, left.label, left.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float unit_left = low.x + width - text_width("mm");
    const float right_end = unit_left - grid(1);
    const float left_end = right_end - grid(16);
    text_ending_at(list, {left_end, low.y}, left.value, text_colour(ColourRole::left_arm),
                   TextFace::bold);
    text_ending_at(list, {right_end, low.y}, right.value, text_colour(ColourRole::right_arm),
                   TextFace::bold);
    text_at(list, {unit_left, low.y}, left.unit, colour(Tone::text_dim));
    text_at(list, low, shortened(left.label, left_end - grid(14) - low.x), colour(Tone::text_dim));
}

void draw_values(const Ui& ui, const LightRows& rows) {
    const auto& left = rows.eyes.front().values;
    const auto& right = rows.eyes.back().values;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float end = low.x + ImGui::GetContentRegionAvail().x - text_width("mm") - grid(1);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    text_ending_at(list, {end - grid(16), low.y}, "left", colour(Tone::text_dim));
    text_ending_at(list, {end, low.y}, "right", colour(Tone::text_dim));
    if (end - grid(16) - text_width("left") - text_width("Eye ") > low.x)
        text_at(list, low, "Eye", colour(Tone::text_dim));
    ImGui::Dummy({1, ImGui::GetTextLineHeight()});
    for (std::size_t i = 0; i < std::min(left.size(), right.size()); ++i) {
        draw_value_line(ui, "light_at_stops/value/" + std::to_string(i), left[i], right[i]);
    }
}

// The openings that take light, each with the colour of its band and its share at worst for each eye.
void draw_openings(const Ui& ui, const LightRows& rows) {
    const auto names = opening_names(rows);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    if (names.empty()) dim_text("Nothing is clipped.");
    for (std::size_t i = 0; i < names.size(); ++i) {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        const std::string id = "light_at_stops/opening/" + std::to_string(i);
        const bool pressed = ImGui::InvisibleButton(id.c_str(), {width, line + grid(0.5F)});
        const bool hovered = ImGui::IsItemHovered();
        float end = low.x + width - text_width("mm") - grid(1);
        bool is_leak = false;
        for (std::size_t eye = rows.eyes.size(); eye-- > 0; end -= grid(16)) {
            const StopShare* share = share_of(rows.eyes[eye], names[i]);
            const std::string value =
                share != nullptr ? format_number(100 * share->largest, 0) : "–";
            text_ending_at(list, {end, low.y}, value, text_colour(rows.eyes[eye].role),
                           TextFace::bold);
            if (share == nullptr) continue;
            is_leak = share->is_leak;
            if (hovered) ui.hover_part(share->part);
            if (pressed && share->part) ui.selected_part = share->part;
        }
        text_at(list, {low.x + width - text_width("mm"), low.y}, "%", colour(Tone::text_dim));
        const std::string words = (is_leak ? "Light that leaks out here, where it is most: "
                                           : "Light that ends here, where it is most: ")
                                  + names[i];
        ui.describe(id, names[i], words);
        list.AddRectFilled({low.x, low.y + line * 0.2F}, {low.x + line * 0.7F, low.y + line * 0.9F},
                           band_colour(i), grid(0.5F));
        text_at(list, {low.x + line + grid(0.5F), low.y},
                shortened(names[i], width - line - text_width("mm") - grid(28)),
                colour(hovered ? Tone::text : Tone::text_dim));
    }
}

}  // namespace

void draw_light_at_stops_panel(const Ui& ui) {
    const LightRows rows = light_at_stops_rows(ui.setup(), *ui.report);
    const float line = ImGui::GetTextLineHeight();
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float scale_room = text_width("100") + grid(1);  // of the left eye's plot
    const float column = (width - grid(4) - scale_room) / 2;
    const float words =
        line * static_cast<float>(4 + std::max<std::size_t>(1, opening_names(rows).size()))
        + grid(6);
    const float height = std::clamp(ImGui::GetContentRegionAvail().y - words, line * 5, line * 14);
    for (std::size_t i = 0; i < rows.eyes.size(); ++i) {
        const bool is_left = rows.eyes[i].eye == Eye::left;
        const float left = is_left ? low.x : low.x + column + scale_room + grid(4);
        draw_eye(ui, rows, rows.eyes[i], {left, low.y, column + (is_left ? scale_room : 0), height},
                 std::round(column * 0.38F));
    }
    ImGui::SetCursorScreenPos({low.x, low.y + height + grid(1)});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, grid(0.5F)});
    draw_values(ui, rows);
    draw_openings(ui, rows);
    ImGui::PopStyleVar();
}

}  // namespace beamfork
