#include "ui/light/brightness_panel.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "scene/light/brightness_rows.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

constexpr std::array eye_roles{ColourRole::left_arm, ColourRole::right_arm};

float unit_room() { return grid(8); }
float value_room() { return grid(12); }
// Where numbers end in the present piece of the panel.
float values_right() {
    return ImGui::GetCursorScreenPos().x + ImGui::GetContentRegionAvail().x - unit_room();
}

void draw_pair_values(ImVec2 low, float right, const std::array<std::string, 2>& values) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (std::size_t side = 0; side < 2; ++side) {
        const float end = right - static_cast<float>(1 - side) * value_room();
        text_ending_at(list, {end, low.y}, typeset(values[side]), text_colour(eye_roles[side]),
                       TextFace::bold);
    }
}

void draw_heading(float right) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low = ImGui::GetCursorScreenPos();
    text_at(list, low, "Eye", colour(Tone::text_dim));
    text_ending_at(list, {right - value_room(), low.y}, "left", colour(Tone::text_dim));
    text_ending_at(list, {right, low.y}, "right", colour(Tone::text_dim));
    ImGui::Dummy({1, ImGui::GetTextLineHeight() + grid(1)});
}

void draw_per_eye(const Ui& ui, const BrightnessRows& rows, float right) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::size_t number = 0;
    for (const EyePairRow& row : rows.per_eye) {
        const ImVec2 low =
            line_area(ui, "brightness/eye/" + std::to_string(number++), row.label, row.help);
        text_at(list, low, shortened(row.label, right - 2 * value_room() - low.x),
                colour(Tone::text_dim));
        draw_pair_values(low, right, row.values);
        text_at(list, {right + grid(1), low.y}, row.unit, colour(Tone::text_dim));
    }
}

void draw_both(const Ui& ui, const BrightnessRows& rows, float right) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::size_t number = 0;
    for (const ValueRow& row : rows.both) {
        const ImVec2 low =
            line_area(ui, "brightness/both/" + std::to_string(number++), row.label, row.help);
        const std::string value = typeset(row.value);
        const float room = right - low.x - text_width(value, TextFace::bold) - grid(2);
        text_at(list, low, shortened(row.label, room), colour(Tone::text_dim));
        text_ending_at(list, {right, low.y}, value, colour(Tone::text), TextFace::bold);
        text_at(list, {right + grid(1), low.y}, row.unit, colour(Tone::text_dim));
    }
}

// The two eyes' pieces of the staircase, one above the other.
void draw_bars(const BrightnessStepRow& row, ImVec2 low, float left, float width, double most) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    const auto at = [&](double lost) { return left + width * static_cast<float>(lost / most); };
    for (std::size_t side = 0; side < 2; ++side) {
        const auto& bar = row.eyes[side];
        if (bar.passes == "–") continue;
        const float top = low.y + line * (side == 0 ? 0.1F : 0.55F);
        const float from = at(bar.from);
        list.AddRectFilled({from, top}, {std::max(at(bar.to), from + 1), top + line * 0.36F},
                           colour(eye_roles[side], 0.9F));
    }
}

void draw_steps(const Ui& ui, const BrightnessRows& rows, float right) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float left = ImGui::GetCursorScreenPos().x;
    const float free = right - 2 * value_room() - left;
    const bool has_bars =
        free > grid(60);  // a narrow strip keeps the names and leaves the bars out
    const float label_room = has_bars ? free * 0.55F : free;
    const ImVec2 top = ImGui::GetCursorScreenPos();
    text_at(list, top, "Surface by surface", colour(Tone::text), TextFace::bold);
    if (has_bars) text_at(list, {left + label_room, top.y}, "light lost", colour(Tone::text_dim));
    text_ending_at(list, {right, top.y}, "goes on", colour(Tone::text_dim));
    ImGui::Dummy({1, ImGui::GetTextLineHeight() + grid(1)});
    std::size_t number = 0;
    for (const BrightnessStepRow& row : rows.steps) {
        const std::string id = "brightness/step/" + std::to_string(number++);
        const ImVec2 low = line_area(ui, id, row.label, row.label + ". " + row.help);
        const bool hot = ImGui::IsItemHovered();
        if (hot) ui.hover_part(row.part);
        if (ImGui::IsItemActivated() && row.part) ui.selected_part = row.part;
        text_at(list, low, shortened(row.label, label_room - grid(2)),
                colour(hot ? Tone::text : Tone::text_dim));
        if (has_bars)
            draw_bars(row, low, left + label_room, free - label_room - grid(2), rows.most_lost);
        draw_pair_values(low, right, {row.eyes[0].passes, row.eyes[1].passes});
        text_at(list, {right + grid(1), low.y}, "%", colour(Tone::text_dim));
    }
}

}  // namespace

void draw_brightness_panel(const Ui& ui) {
    const BrightnessRows rows = brightness_rows(ui.setup(), *ui.report);
    ImGui::PushFont(font(TextFace::bold));
    wrapped_text(typeset(rows.sentence), colour(Tone::text));
    ImGui::PopFont();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    ImGui::Dummy({1, grid(1)});
    {
        SideBySide pieces("brightness/pieces", 2, grid(90));
        pieces.next();
        draw_heading(values_right());
        draw_per_eye(ui, rows, values_right());
        draw_both(ui, rows, values_right());
        pieces.next();
        draw_steps(ui, rows, values_right());
    }
    wrapped_text("Never point any of this at the Sun: no brightness shown here makes that safe.",
                 colour(Tone::text_dim));
    ImGui::PopStyleVar();
}

}  // namespace beamfork
