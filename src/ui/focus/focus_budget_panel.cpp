#include "ui/focus/focus_budget_panel.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/text.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "ui/kit/icons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

// The place of a number on an axis that runs from `low` to `high` over the pixels from `left` on.
struct Axis {
    double low;
    double high;
    float left;
    float width;
    [[nodiscard]] float at(double value) const {
        return left + width * static_cast<float>((value - low) / (high - low));
    }
};

// "Club refractor: back focus", or "Club refractor" where there is no room.
std::string name_that_fits(const std::string& label, float room) {
    const bool fits = text_width(label, TextFace::bold) <= room;
    return fits ? label : shortened(label.substr(0, label.find(':')), room);
}

void draw_bar(
    const Ui& ui, const BudgetBar& bar, std::size_t number, const Axis& axis, float label_room) {
    const float height = ImGui::GetTextLineHeight() + grid(0.75F);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const std::string id = "focus_budget/row/" + std::to_string(number);
    const bool pressed = ImGui::InvisibleButton(id.c_str(), {width, height});
    if (pressed && bar.part) ui.selected_part = bar.part;
    const bool hot = ImGui::IsItemHovered()
                     || (bar.part && ui.kept.hovered_part_before == static_cast<int>(*bar.part));
    if (ImGui::IsItemHovered()) ui.hover_part(bar.part);
    ui.describe(id, bar.label, bar.help);

    ImDrawList& list = *ImGui::GetWindowDrawList();
    const bool is_total =
        bar.entry == BudgetEntry::available || bar.entry == BudgetEntry::left_over;
    const TextFace face = is_total ? TextFace::bold : TextFace::regular;
    if (hot)
        list.AddRectFilled(low, {low.x + width, low.y + height}, colour(Tone::raised), grid(0.5F));
    text_at(list, low, name_that_fits(bar.label, label_room - grid(2)),
            colour(hot || is_total ? Tone::text : Tone::text_dim), face);
    text_ending_at(list, {low.x + width, low.y}, typeset(bar.value), text_colour(bar.role), face);

    const float a = axis.at(std::min(bar.from, bar.to));
    const float b = std::max(axis.at(std::max(bar.from, bar.to)), a + 1);
    const float inset = grid(0.5F);
    const ImVec2 bar_low{a, low.y + inset};
    const ImVec2 bar_high{b, low.y + height - inset - grid(0.25F)};
    const bool is_less = bar.entry == BudgetEntry::spends || bar.entry == BudgetEntry::observer;
    list.AddRectFilled(bar_low, bar_high, colour(bar.role, is_less ? 0.55F : 0.9F), grid(0.5F));
    if (bar.role == ColourRole::shortfall)
        list.AddRect(bar_low, bar_high, colour(Tone::text), grid(0.5F));
    // What is left goes on to the next bar.
    if (bar.entry != BudgetEntry::left_over) {
        const float x = axis.at(bar.to);
        list.AddLine({x, bar_high.y}, {x, low.y + height + inset}, colour(Tone::text_dim, 0.7F));
    }
}

void draw_bars(const Ui& ui, const FocusBudgetRows& rows) {
    const float width = ImGui::GetContentRegionAvail().x;
    const float label_room = std::min(width * 0.46F, grid(54));
    const float value_room = grid(13);
    const float left = ImGui::GetCursorScreenPos().x;
    const Axis axis{rows.low, rows.high, left + label_room,
                    std::max(8.0F, width - label_room - value_room)};
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    const float top = ImGui::GetCursorScreenPos().y;
    for (std::size_t i = 0; i < rows.bars.size(); ++i)
        draw_bar(ui, rows.bars[i], i, axis, label_room);
    const float bottom = ImGui::GetCursorScreenPos().y;
    ImGui::GetWindowDrawList()->AddLine({axis.at(0), top}, {axis.at(0), bottom},
                                        colour(Tone::text_dim, 0.5F));
    ImGui::PopStyleVar();
}

// A diamond where focus wants the drawtube.
void draw_diamond(ImDrawList& list, ImVec2 centre, float size, ImU32 ink) {
    list.AddQuadFilled({centre.x, centre.y - size}, {centre.x + size, centre.y},
                       {centre.x, centre.y + size}, {centre.x - size, centre.y}, ink);
}

void draw_travel(const Ui& ui, const TravelScale& scale) {
    ImGui::PushFont(font(TextFace::bold));
    wrapped_text(scale.sentence, colour(Tone::text));
    ImGui::PopFont();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float width = ImGui::GetContentRegionAvail().x;
    const float line = ImGui::GetTextLineHeight();
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const bool fits = text_width(scale.margin_in + "  " + scale.margin_out) <= width;
    ImGui::InvisibleButton("focus_budget/travel", {width, (fits ? 1.0F : 2.0F) * line + grid(8)});
    ui.describe("focus_budget/travel", scale.sentence, scale.help);

    const Axis axis{scale.low, scale.high, low.x + grid(1), width - grid(2)};
    const float rail_top = low.y + grid(1);
    const float rail_bottom = rail_top + grid(2.5F);
    const float middle = (rail_top + rail_bottom) / 2;
    list.AddRectFilled({axis.at(0), rail_top}, {axis.at(scale.travel), rail_bottom},
                       colour(Tone::raised_hot), grid(0.5F));
    list.AddRect({axis.at(0), rail_top}, {axis.at(scale.travel), rail_bottom},
                 colour(Tone::text_dim), grid(0.5F));
    const float stands = axis.at(scale.present);
    list.AddRectFilled({axis.at(0), rail_top}, {stands, rail_bottom}, colour(ColourRole::metal),
                       grid(0.5F));
    list.AddRectFilled({stands - grid(0.5F), rail_top - grid(0.75F)},
                       {stands + grid(0.5F), rail_bottom + grid(0.75F)}, colour(Tone::text));
    if (!scale.reaches) {
        const float end = axis.at(std::clamp(scale.wanted, 0.0, scale.travel));
        dashed_line(list, {end, middle}, {axis.at(scale.wanted), middle}, colour(scale.role),
                    grid(0.5F));
    }
    draw_diamond(list, {axis.at(scale.wanted), middle}, grid(1.75F), colour(scale.role));

    const float text_top = rail_bottom + grid(1);
    text_at(list, {low.x, text_top}, scale.margin_in, text_colour(scale.role));
    text_ending_at(list, {low.x + width, text_top + (fits ? 0 : line)}, scale.margin_out,
                   colour(Tone::text_dim));
}

}  // namespace

void draw_focus_budget_panel(const Ui& ui) {
    const FocusBudgetRows rows = focus_budget_rows(*ui.report);
    draw_travel(ui, rows.travel);
    draw_bars(ui, rows);
}

}  // namespace beamfork
