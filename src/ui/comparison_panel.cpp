#include <algorithm>
#include <array>
#include <string>

#include "scene/comparison_rows.hpp"
#include "ui/panels.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

const ComparisonChoice* chosen_of(const Ui& ui) {
    const auto& choices = ui.view.comparison.choices;
    const auto found =
        std::find_if(choices.begin(), choices.end(), [&](const ComparisonChoice& choice) {
            return choice.key == ui.session.compare_with;
        });
    return found == choices.end() ? nullptr : &*found;
}

void draw_other_chooser(const Ui& ui, float width) {
    constexpr const char* help = "Which setup this one is held against.";
    const ComparisonChoice* chosen = chosen_of(ui);
    const std::string shown = chosen != nullptr                 ? chosen->label
                              : ui.session.compare_with.empty() ? "Compare with …"
                                                                : ui.session.compare_with;
    const bool is_open = begin_chooser("##comparison/other", shown, width);
    tooltip(help);
    ui.note("comparison/other", shown, help);
    if (!is_open) return;
    for (const ComparisonChoice& choice : ui.view.comparison.choices) {
        ImGui::PushID(choice.key.c_str());
        if (ImGui::Selectable(choice.label.c_str(), &choice == chosen))
            ui.session.compare_with = choice.key;
        tooltip(choice.help);
        ui.note("comparison/other/" + choice.key, choice.label, choice.help);
        ImGui::PopID();
    }
    ImGui::EndCombo();
}

void draw_place(const Ui& ui) {
    constexpr std::array<std::string_view, 4> words{"Alone", "Over", "Beside", "Split"};
    constexpr std::array<std::string_view, 4> helps{
        "The picture shows this setup only.",
        "The picture shows the other setup too, where it stands itself: its light and its bodies "
        "in "
        "green.",
        "The picture shows the other setup too, beside this one.",
        "The picture is split: this setup at the left, the other at the right, seen from the same "
        "place."};
    auto& place = ui.session.compare_place;
    place = static_cast<CompanionPlace>(
        segments(ui, "comparison/place", words, helps, static_cast<std::size_t>(place), true));
}

void draw_controls(const Ui& ui) {
    const float width = ImGui::GetContentRegionAvail().x;
    draw_other_chooser(ui, std::min(width, grid(72)));
    const bool is_wide = width > grid(190);
    if (is_wide) ImGui::SameLine(0, grid(2));
    if (text_button(
            ui, "comparison/keep", "Keep aside",
            "Remembers this setup as it is now, to compare what you change next with it.")) {
        ui.requests.keeps_for_comparison = true;
        ui.session.compare_with = "kept";
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
    float left = 0;
    float width = 0;
};

Table table_in(float width) {
    const float left = ImGui::GetCursorScreenPos().x;
    const float column = std::clamp(width * 0.3F, grid(15), grid(34));
    return {left + width - column - grid(2), left + width, left, width};
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

void draw_result(const Ui& ui,
                 const ComparisonRow& row,
                 const std::string& id,
                 const Table& table) {
    const std::string verdict = row.better == Side::here    ? " This setup is better."
                                : row.better == Side::there ? " The other is better."
                                                            : "";
    const std::string words = row.label + ": " + row.here + ", other " + row.there;
    const ImVec2 low = line_area(ui, id, words, row.help + verdict);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float room = table.there - table.here - grid(5);
    text_at(list, low, shortened(row.label, table.here - room - low.x - grid(3)),
            colour(Tone::text_dim));
    draw_value_of(list, {table.here, low.y}, row.here, row.better == Side::here, room);
    draw_value_of(list, {table.there, low.y}, row.there, row.better == Side::there, room);
}

void draw_difference(const Ui& ui,
                     const DifferenceRow& row,
                     const std::string& id,
                     const Table& table) {
    const std::string words = row.label + ": " + row.here + ", other " + row.there;
    const ImVec2 low = line_area(ui, id, words, words + ".");
    if (ImGui::IsItemHovered() && row.part) ui.hover_part(row.part);
    if (ImGui::IsItemActivated() && row.part) ui.session.selected_part = row.part;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float room = table.there - table.here - grid(3);
    text_at(list, low, shortened(row.label, table.here - room - low.x - grid(3)),
            colour(Tone::text_dim));
    text_ending_at(list, {table.here, low.y}, shortened(typeset(row.here), room),
                   colour(Tone::text));
    text_ending_at(list, {table.there, low.y}, shortened(typeset(row.there), room),
                   colour(Tone::text));
}

void draw_heading_line(const std::string& words, const Table& table) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    text_at(list, low, words, colour(Tone::text), TextFace::bold);
    text_ending_at(list, {table.here, low.y}, "this", colour(Tone::text_dim));
    text_ending_at(list, {table.there, low.y}, "other", colour(Tone::text_dim));
    ImGui::Dummy({table.width, ImGui::GetTextLineHeight() + grid(0.5F)});
}

void draw_results(const Ui& ui, const ComparisonRows& rows) {
    const Table table = table_in(ImGui::GetContentRegionAvail().x);
    draw_heading_line("Results", table);
    for (std::size_t i = 0; i < rows.changed.size(); ++i)
        draw_result(ui, rows.changed[i], "comparison/result/" + std::to_string(i), table);
    for (std::size_t i = 0; i < rows.same.size(); ++i)
        draw_result(ui, rows.same[i], "comparison/same/" + std::to_string(i), table);
}

void draw_parts(const Ui& ui, const ComparisonRows& rows) {
    const Table table = table_in(ImGui::GetContentRegionAvail().x);
    draw_heading_line("Parts", table);
    if (rows.parts.empty()) dim_text("All parts are alike.");
    for (std::size_t i = 0; i < rows.parts.size(); ++i)
        draw_difference(ui, rows.parts[i], "comparison/part/" + std::to_string(i), table);
}

}  // namespace

void draw_comparison_panel(const Ui& ui) {
    draw_controls(ui);
    const ComparisonView& view = ui.view.comparison;
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
    const ComparisonRows rows =
        comparison_rows(ui.setup(), *ui.view.report, view.other->setup, view.other->report);
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
