#include "ui/focus/uncertainty_panel.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "scene/focus/uncertainty_rows.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

// How likely focus is at each drawtube position, over the travel.
void draw_density(const Ui& ui, const UncertaintyRows& rows) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float line = ImGui::GetTextLineHeight();
    const float height = line * 3;
    ImGui::InvisibleButton("uncertainty/density", {width, height + line + grid(1)});
    ui.describe(
        "uncertainty/density", rows.headline,
        "How likely focus lies at each drawtube position. The bright zone is the drawtube's "
        "travel. "
            + rows.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto x = [&](double at) {
        return low.x + width * static_cast<float>((at - rows.low) / (rows.high - rows.low));
    };
    const float foot = low.y + height;
    list.AddRectFilled({x(0), low.y}, {x(rows.travel), foot}, colour(Tone::raised));
    const auto count = static_cast<float>(rows.density.size() - 1);
    const auto at = [&](std::size_t i) {
        const float peak = height - grid(1);
        return ImVec2{low.x + width * static_cast<float>(i) / count,
                      foot - peak * static_cast<float>(rows.density[i])};
    };
    for (std::size_t i = 1; i < rows.density.size(); ++i) {
        const ImVec2 a = at(i - 1);
        const ImVec2 b = at(i);
        const float middle = (a.x + b.x) / 2;
        const bool is_inside = middle >= x(0) && middle <= x(rows.travel);
        const ColourRole role = is_inside ? ColourRole::good : ColourRole::shortfall;
        list.AddQuadFilled(a, b, {b.x, foot}, {a.x, foot}, colour(role, 0.75F));
        list.AddLine(a, b, text_colour(role), std::max(1.0F, grid(0.4F)));
    }
    list.AddLine({x(0), low.y}, {x(0), foot}, colour(Tone::text_dim));
    list.AddLine({x(rows.travel), low.y}, {x(rows.travel), foot}, colour(Tone::text_dim));
    list.AddLine({low.x, foot}, {low.x + width, foot}, colour(Tone::text_dim));
    const std::string end = typeset(std::to_string(static_cast<int>(rows.travel))) + " mm";
    text_at(list, {x(0), foot + grid(0.5F)}, "in", colour(Tone::text_dim));
    text_ending_at(list, {x(rows.travel), foot + grid(0.5F)}, end, colour(Tone::text_dim));
}

void draw_contribution(const Ui& ui, const ContributionRow& row, std::size_t number) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float line = ImGui::GetTextLineHeight();
    const std::string id = "uncertainty/row/" + std::to_string(number);
    if (ImGui::InvisibleButton(id.c_str(), {width, line + grid(2)})) ui.selected_part = row.part;
    if (ImGui::IsItemHovered()) ui.hover_part(row.part);
    ui.describe(id, row.label, row.label + ", " + row.value + ". " + row.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string percent = row.percent + " %";
    const float bar_top = low.y + line + grid(0.25F);
    const float room = width - text_width(percent, TextFace::bold) - grid(2);
    const float value_room = std::min(text_width(row.value), room / 2);
    text_at(list, low, shortened(row.label, room - value_room - grid(2)), colour(Tone::text));
    text_ending_at(list, {low.x + room, low.y}, shortened(row.value, value_room + 1),
                   colour(Tone::text_dim));
    text_ending_at(list, {low.x + width, low.y}, percent, colour(Tone::text), TextFace::bold);
    list.AddRectFilled({low.x, bar_top}, {low.x + width, bar_top + grid(0.75F)},
                       colour(Tone::raised));
    const ImVec2 bar_end{low.x + width * static_cast<float>(row.share), bar_top + grid(0.75F)};
    // What was only assumed is an outline, so that a page of assumptions does not look like knowledge.
    if (row.is_assumed) {
        list.AddRect({low.x, bar_top}, bar_end, colour(ColourRole::dimension));
    } else {
        list.AddRectFilled({low.x, bar_top}, bar_end, colour(ColourRole::dimension));
    }
}

void draw_other_uses(const Ui& ui) {
    const auto rows = other_uses_rows(ui.setup(), *ui.report);
    if (rows.empty()) return;
    ImGui::Dummy({1, grid(1)});
    dim_text("The same parts, used otherwise");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const ImVec2 low = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        const std::string id = "other_uses/row/" + std::to_string(i);
        ImGui::InvisibleButton(id.c_str(), {width, ImGui::GetTextLineHeight() + grid(0.5F)});
        ui.describe(id, rows[i].label, rows[i].help);
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const std::string& value = rows[i].value;
        text_ending_at(list, {low.x + width, low.y}, value, text_colour(rows[i].role));
        text_at(list, low, shortened(rows[i].label, width - text_width(value) - grid(2)),
                colour(Tone::text));
    }
}

}  // namespace

void draw_uncertainty_panel(const Ui& ui) {
    const UncertaintyRows rows = uncertainty_rows(ui.setup(), *ui.report);
    if (rows.is_stated) {
        ImGui::PushFont(font(TextFace::large));
        wrapped_text(rows.headline, text_colour(rows.role));
        ImGui::PopFont();
        ui.describe("uncertainty/headline", rows.headline, rows.help);
        draw_density(ui, rows);
    }
    wrapped_text(rows.sentence, colour(Tone::text_dim));
    for (std::size_t i = 0; i < rows.contributions.size(); ++i)
        draw_contribution(ui, rows.contributions[i], i);
    if (!rows.advice.empty()) wrapped_text(rows.advice, colour(Tone::text));
    if (!rows.assumed.empty()) {
        wrapped_text(rows.assumed, colour(Tone::text_dim));
        ui.note("uncertainty/assumed", rows.assumed);
    }
    draw_other_uses(ui);
}

}  // namespace beamfork
