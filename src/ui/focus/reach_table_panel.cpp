#include "ui/focus/reach_table_panel.hpp"

#include <algorithm>
#include <vector>

#include "base/text.hpp"
#include "document/edit.hpp"
#include "scene/focus/reach_table_rows.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

struct ShownColumn {
    std::size_t index = 0;
    float left = 0;
    float width = 0;
};

// All columns as wide as their longest words; names give way where there is no room.
std::vector<ShownColumn> all_columns(const ReachRows& rows, float left, float room) {
    std::vector<ShownColumn> shown;
    float total = 0;
    float names = 0;
    for (std::size_t i = 0; i < rows.columns.size(); ++i) {
        const ReachColumn& column = rows.columns[i];
        float width = text_width(column.heading + " " + column.unit, TextFace::bold);
        for (const ReachRow& row : rows.rows)
            width = std::max(width, text_width(row.cells[i], TextFace::bold));
        shown.push_back({i, 0, width + grid(3)});
        total += width + grid(3);
        if (i < 3) names += width + grid(3);
    }
    const float spare = std::min(0.0F, room - total);
    for (ShownColumn& column : shown) {
        if (column.index < 3)
            column.width = std::max(grid(9), column.width + spare * column.width / names);
        column.left = left;
        left += column.width;
    }
    return shown;
}

// What is changed against the chosen combination, and whether it reaches then.
std::vector<ShownColumn> few_columns(const ReachRows& rows, float left, float room) {
    float reach = 0;
    for (const ReachRow& row : rows.rows)
        reach = std::max(reach, text_width(row.cells[reach_column], TextFace::bold));
    const float name = std::max(grid(12), room - reach);
    return {{0, left, name}, {reach_column, left + name, reach + grid(3)}};
}

void draw_cell(ImDrawList& list,
               const ShownColumn& at,
               const ReachColumn& column,
               float top,
               const std::string& text,
               ImU32 ink,
               TextFace face) {
    const float room = at.width - grid(3);
    const std::string words = shortened(column.is_number ? typeset(text) : text, room + grid(0.5F));
    if (column.is_number) {
        text_ending_at(list, {at.left + room, top}, words, ink, face);
    } else {
        text_at(list, {at.left, top}, words, ink, face);
    }
}

void draw_headings(const Ui& ui, const ReachRows& rows, const std::vector<ShownColumn>& shown) {
    const bool is_wide = shown.size() == rows.columns.size();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = ImGui::GetTextLineHeight();
    const ImVec2 start = ImGui::GetCursorScreenPos();
    for (const ShownColumn& at : shown) {
        const ReachColumn& column = rows.columns[at.index];
        ImGui::SetCursorScreenPos({at.left, start.y});
        const std::string id = "reach_table/column/" + std::to_string(at.index);
        ImGui::InvisibleButton(id.c_str(), {at.width, line + grid(1)});
        ui.describe(id, column.heading, column.help);
        const std::string heading = !is_wide && at.index == 0 ? "With one change"
                                    : column.unit.empty()     ? column.heading
                                                              : column.heading + " " + column.unit;
        draw_cell(list, at, column, start.y, heading, colour(Tone::text_dim), TextFace::regular);
    }
    ImGui::SetCursorScreenPos({start.x, start.y + line + grid(1)});
}

void choose(const Ui& ui, const Choice& wanted) {
    const Choice& now = ui.setup().chosen;
    if (wanted.eyepiece != now.eyepiece) ui.edit(ChoosePart{wanted.eyepiece});
    if (wanted.observer != now.observer) ui.edit(ChoosePart{wanted.observer});
    if (wanted.target != now.target) ui.edit(ChoosePart{wanted.target});
}

void draw_row(const Ui& ui,
              const ReachRows& rows,
              std::size_t number,
              const std::vector<ShownColumn>& shown) {
    const ReachRow& row = rows.rows[number];
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float height = ImGui::GetTextLineHeight() + grid(1);
    const std::string id = "reach_table/row/" + std::to_string(number);
    if (ImGui::InvisibleButton(id.c_str(), {width, height})) choose(ui, row.choice);
    ui.one_gesture();
    const bool hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    const std::string help = row.sentence + (row.is_chosen ? "" : " Click to choose it.");
    ui.describe(id, row.sentence, help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 high{low.x + width, low.y + height};
    if (row.is_chosen || hot)
        list.AddRectFilled(low, high, colour(hot ? Tone::raised_hot : Tone::raised), grid(0.5F));
    if (row.is_chosen) list.AddRectFilled(low, {low.x + grid(0.75F), high.y}, colour(Tone::accent));
    const bool is_wide = shown.size() == rows.columns.size();
    for (const ShownColumn& at : shown) {
        const bool is_verdict = at.index == reach_column;
        const ImU32 ink = is_verdict                         ? text_colour(row.role)
                          : row.is_chosen || hot             ? colour(Tone::text)
                          : rows.columns[at.index].is_number ? colour(Tone::text)
                                                             : colour(Tone::text_dim);
        const std::string& words = !is_wide && at.index == 0 ? row.change : row.cells[at.index];
        draw_cell(list, at, rows.columns[at.index], low.y + grid(0.5F), words, ink,
                  is_verdict && row.is_chosen ? TextFace::bold : TextFace::regular);
    }
}

}  // namespace

void draw_reach_table_panel(const Ui& ui, bool is_wide) {
    const ReachRows rows = reach_table_rows(ui.setup(), *ui.report);
    ImGui::PushFont(font(TextFace::bold));
    wrapped_text(rows.summary, colour(Tone::text));
    ImGui::PopFont();
    wrapped_text(rows.one_place, colour(Tone::text_dim));
    ui.note("reach_table/one_place", rows.one_place);
    ImGui::Dummy({1, grid(1)});
    const float left = ImGui::GetCursorScreenPos().x + grid(2);
    const float room = ImGui::GetContentRegionAvail().x - grid(2);
    const auto shown = is_wide ? all_columns(rows, left, room) : few_columns(rows, left, room);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    draw_headings(ui, rows, shown);
    for (std::size_t i = 0; i < rows.rows.size(); ++i) {
        if (is_wide || !rows.rows[i].change.empty()) draw_row(ui, rows, i, shown);
    }
    ImGui::PopStyleVar();
}

}  // namespace beamfork
