#include "ui/comparison/comparison_panel.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/text.hpp"
#include "scene/comparison/comparison_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

const ComparisonChoice* chosen_of(const ComparisonUi& ui) {
    const auto& choices = ui.view.choices;
    const auto found =
        std::find_if(choices.begin(), choices.end(),
                     [&](const ComparisonChoice& choice) { return choice.key == ui.session.with; });
    return found == choices.end() ? nullptr : &*found;
}

void draw_other_chooser(const ComparisonUi& ui, float width) {
    constexpr const char* help = "Which setup this one is held against.";
    const ComparisonChoice* chosen = chosen_of(ui);
    const std::string shown = chosen != nullptr         ? chosen->label
                              : ui.session.with.empty() ? "Compare with …"
                                                        : ui.session.with;
    const bool is_open = begin_chooser("##comparison/other", shown, width);
    ui.describe("comparison/other", shown, help);
    if (!is_open) return;
    for (const ComparisonChoice& choice : ui.view.choices) {
        ImGui::PushID(choice.key.c_str());
        if (chooser_entry(choice.label, &choice == chosen)) ui.session.with = choice.key;
        ui.describe("comparison/other/" + choice.key, choice.label, choice.help);
        ImGui::PopID();
    }
    ImGui::EndCombo();
}

void draw_place(const ComparisonUi& ui) {
    constexpr std::array<std::string_view, 4> words{"Alone", "Over", "Beside", "Split"};
    constexpr std::array<std::string_view, 4> helps{
        "The picture shows this setup only.",
        "The picture shows the other setup too, where it stands itself: its light and its bodies "
        "in "
        "green.",
        "The picture shows the other setup too, beside this one.",
        "The picture is split: this setup at the left, the other at the right, seen from the same "
        "place."};
    auto& place = ui.session.place;
    place = static_cast<CompanionPlace>(
        segments(ui, "comparison/place", words, helps, static_cast<std::size_t>(place), true));
}

void draw_controls(const ComparisonUi& ui) {
    const float width = ImGui::GetContentRegionAvail().x;
    draw_other_chooser(ui, std::min(width, grid(72)));
    const bool is_wide = width > grid(190);
    if (is_wide) ImGui::SameLine(0, grid(2));
    if (text_button(
            ui, "comparison/keep", "Keep aside",
            "Remembers this setup as it is now, to compare what you change next with it.")) {
        ui.asks.keeps = true;
        ui.session.with = "kept";
    }
    if (is_wide) ImGui::SameLine(0, grid(3));
    if (is_wide) {
        ImGui::AlignTextToFramePadding();
        dim_text("Picture");
        ImGui::SameLine(0, grid(1.5F));
    }
    draw_place(ui);
}

struct Table {
    float here = 0;   ///< right end of this setup's values, screen
    float there = 0;  ///< of the other's
    float room = 0;   ///< for one value
    float width = 0;
    bool is_stacked = false;  ///< too narrow: the label stands above its values
};

// What stands in one line.
struct Cells {
    std::string label;
    std::string here;
    std::string there;
    std::optional<Side> better{};
};

// Columns as wide as the widest of these values; where that leaves the labels too little, they stand above.
Table table_for(const std::vector<Cells>& lines) {
    const float left = ImGui::GetCursorScreenPos().x;
    const float width = ImGui::GetContentRegionAvail().x;
    const float tick = ImGui::GetTextLineHeight() * 1.2F;
    const float gap = grid(2);
    float value = text_width("other", TextFace::regular);
    float label = 0;
    for (const Cells& one : lines) {
        for (const std::string& text : {one.here, one.there})
            value = std::max(value, text_width(typeset(text), TextFace::bold));
        label = std::max(label, text_width(one.label, TextFace::regular));
    }
    const float wanted = std::min(value + tick, grid(34));
    const bool is_stacked = 2 * wanted + gap + std::min(label, grid(24)) > width;
    const float column = is_stacked ? (width - gap) / 2 : wanted;
    return {left + width - column - gap, left + width, column - tick, width, is_stacked};
}

// Where the values of a line stand whose label begins at `low`.
float draw_label(const std::string& label, ImVec2 low, const Table& table) {
    const float room = table.is_stacked ? table.width
                                        : table.here - table.room - low.x
                                              - ImGui::GetTextLineHeight() * 1.2F - grid(1);
    text_at(*ImGui::GetWindowDrawList(), low, shortened(label, room), colour(Tone::text_dim));
    return table.is_stacked ? low.y + ImGui::GetTextLineHeight() : low.y;
}

// The better value is bold, green, and has a tick before it.
void draw_value_of(
    ImDrawList& list, ImVec2 end, const std::string& text, bool is_better, float room) {
    const TextFace face = is_better ? TextFace::bold : TextFace::regular;
    const std::string shown = shortened(typeset(text), room);
    text_ending_at(list, end, shown, is_better ? text_colour(ColourRole::good) : colour(Tone::text),
                   face);
    if (!is_better) return;
    const float line = ImGui::GetTextLineHeight();
    draw_sign(list, FindingSign::tick,
              {end.x - text_width(shown, face) - line * 0.7F, end.y + line / 2}, line * 0.6F,
              text_colour(ColourRole::good));
}

ImVec2 table_line(const ComparisonUi& ui,
                  const std::string& id,
                  const Cells& cells,
                  const std::string& help,
                  const Table& table) {
    return line_area(ui, id, cells.label + ": " + cells.here + ", other " + cells.there, help,
                     table.is_stacked ? 2 : 1);
}

void draw_cells(const Cells& cells, ImVec2 low, const Table& table) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float y = draw_label(cells.label, low, table);
    draw_value_of(list, {table.here, y}, cells.here, cells.better == Side::here, table.room);
    draw_value_of(list, {table.there, y}, cells.there, cells.better == Side::there, table.room);
}

void draw_heading_line(const std::string& words, const Table& table) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    text_at(list, low, words, colour(Tone::text), TextFace::bold);
    text_ending_at(list, {table.here, low.y}, "this", colour(Tone::text_dim));
    text_ending_at(list, {table.there, low.y}, "other", colour(Tone::text_dim));
    ImGui::Dummy({table.width, ImGui::GetTextLineHeight() + grid(0.5F)});
}

void draw_results(const ComparisonUi& ui, const ComparisonRows& rows) {
    std::vector<Cells> lines;
    for (const auto* some : {&rows.changed, &rows.same}) {
        for (const ComparisonRow& row : *some)
            lines.push_back({row.label, row.here, row.there, row.better});
    }
    const Table table = table_for(lines);
    draw_heading_line("Results", table);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const bool is_changed = i < rows.changed.size();
        const std::size_t at = is_changed ? i : i - rows.changed.size();
        const ComparisonRow& row = is_changed ? rows.changed[at] : rows.same[at];
        const std::string verdict = row.better == Side::here    ? " This setup is better."
                                    : row.better == Side::there ? " The other is better."
                                                                : "";
        const std::string id =
            (is_changed ? "comparison/result/" : "comparison/same/") + std::to_string(at);
        draw_cells(lines[i], table_line(ui, id, lines[i], row.help + verdict, table), table);
    }
}

void draw_parts(const ComparisonUi& ui, const ComparisonRows& rows) {
    std::vector<Cells> lines;
    for (const DifferenceRow& row : rows.parts)
        lines.push_back({row.label, row.here, row.there});
    const Table table = table_for(lines);
    draw_heading_line("Parts", table);
    if (rows.parts.empty()) dim_text("All parts are alike.");
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const auto part = rows.parts[i].part;
        const std::string words =
            lines[i].label + ": " + lines[i].here + ", other " + lines[i].there + ".";
        const ImVec2 low =
            table_line(ui, "comparison/part/" + std::to_string(i), lines[i], words, table);
        if (ImGui::IsItemHovered() && part) ui.hover_part(part);
        if (ImGui::IsItemActivated() && part) ui.selected_part = part;
        draw_cells(lines[i], low, table);
    }
}

}  // namespace

std::optional<ComparisonRequest>
wanted_comparison(const ComparisonSession& session, bool is_shown, bool is_talk) {
    if (session.with.empty() || (!is_shown && session.place == CompanionPlace::none)) return {};
    const bool has_no_room = is_talk && session.place == CompanionPlace::split;
    return ComparisonRequest{session.with, has_no_room ? CompanionPlace::none : session.place};
}

void draw_comparison_panel(const ComparisonUi& ui) {
    draw_controls(ui);
    const ComparisonView& view = ui.view;
    if (!view.problem.empty()) {
        wrapped_text(view.problem, colour(Tone::danger));
        ui.note("comparison/problem", view.problem);
        return;
    }
    if (view.other == nullptr) {
        wrapped_text("Choose a setup, or keep this one aside and change it: the two then stand "
                     "side by side.",
                     colour(Tone::text_dim));
        return;
    }
    const ComparisonRows rows = compared_rows(ui, view);
    wrapped_text(rows.summary, colour(Tone::text));
    ui.note("comparison/summary", rows.summary);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    SideBySide pieces("comparison", 2, grid(95));
    pieces.next();
    draw_results(ui, rows);
    pieces.next();
    draw_parts(ui, rows);
    ImGui::PopStyleVar();
}

}  // namespace beamfork
