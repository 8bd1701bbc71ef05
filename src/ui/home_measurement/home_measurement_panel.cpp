#include "ui/home_measurement/home_measurement_panel.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "desk/desk_requests.hpp"
#include "scene/home_measurement/home_measurement_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace {

void draw_measurement_chooser(const MeasurementUi& ui, const HomeMeasurement& chosen) {
    constexpr const char* help = "What you want to find out about your own parts.";
    const bool is_open = begin_chooser("##measurement", chosen.title,
                                       std::min(grid(70), ImGui::GetContentRegionAvail().x));
    ui.describe("measurement", "Measurement", help);
    if (!is_open) return;
    for (const HomeMeasurement& one : home_measurements()) {
        if (chooser_entry(one.title, &one == &chosen)) {
            ui.draft.measurement = one.key;
            ui.draft.target = 0;
        }
        ui.describe("measurement/" + one.key, one.title, one.formula);
    }
    ImGui::EndCombo();
}

// Label, entry for one or several numbers, unit; below it the mean or what is wrong.
void draw_reading(const MeasurementUi& ui, const ReadingRow& row) {
    const float left = ImGui::GetCursorPosX();
    const float width = ImGui::GetContentRegionAvail().x;
    const float entry = left + std::min(grid(46), width * 0.45F);
    const float unit = left + std::min(width, grid(110)) - grid(6);
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(shortened(row.info->label, entry - left - grid(2)).c_str());
    tooltip(row.help);
    ImGui::SameLine(entry);
    std::string text = row.text;
    ImGui::SetNextItemWidth(unit - entry - grid(1));
    const std::string hint = row.info->otherwise ? "optional" : "one or more";
    if (ImGui::InputTextWithHint(("##" + row.name).c_str(), hint.c_str(), &text))
        ui.draft.readings[row.name] = text;
    ui.describe("reading/" + row.info->key, row.info->label, row.help);
    ImGui::SameLine(unit);
    dim_text(row.info->unit);
    if (row.problem.empty() && row.mean.empty()) return;
    ImGui::SetCursorPosX(entry);
    wrapped_text(row.problem.empty() ? typeset(row.mean) : row.problem,
                 colour(row.problem.empty() ? Tone::text_dim : Tone::danger));
}

std::string shares_text(const HomeMeasurementRows& rows) {
    std::string text = rows.measurement->formula
                       + "\nThe ± is one standard uncertainty, the root of "
                         "the sum of squares (JCGM 100:2008, Eq. 10) of:";
    for (const ReadingRow& row : rows.readings) {
        if (!row.share.empty()) text += "\n  " + row.info->label + ": " + row.share;
    }
    return text;
}

void draw_result(const MeasurementUi& ui, const HomeMeasurementRows& rows) {
    ImGui::Dummy({1, grid(1)});
    ImGui::AlignTextToFramePadding();
    dim_text(rows.measurement->gives);
    ImGui::SameLine(0, grid(2));
    const std::string words = rows.result ? rows.result_text : rows.problem;
    const std::string help = shares_text(rows);
    if (rows.result) ImGui::PushFont(font(TextFace::bold));
    wrapped_text(rows.result ? typeset(words) : words,
                 colour(rows.result ? Tone::text : Tone::text_dim));
    if (rows.result) ImGui::PopFont();
    ui.describe("measurement/result", words, help);
}

void draw_fill(const MeasurementUi& ui, const HomeMeasurementRows& rows) {
    if (rows.targets.empty()) {
        wrapped_text("No part of this setup has a field for it.", colour(Tone::text_dim));
        return;
    }
    const FillTarget& target = rows.targets[rows.target];
    const std::string help =
        "Puts the result there; Ctrl+Z takes it back. It is now " + target.present + ".";
    const auto edit = fill_edit(rows);
    if (text_button(ui, "measurement/fill", "Fill in", help, edit.has_value())) {
        ui.desk_requests.gesture_began = true;  // both are one undo step
        ui.edit(*edit);
        if (const auto how_well = fill_tolerance_edit(rows, ui.setup())) ui.edit(*how_well);
        ui.desk_requests.gesture_ended = true;
    }
    ImGui::SameLine(0, grid(2));
    const float room = std::min(grid(80), ImGui::GetContentRegionAvail().x);
    const bool is_open = begin_chooser("##measurement/target", target.label, room);
    constexpr const char* target_help = "Which field of which part the result belongs to.";
    ui.describe("measurement/target", target.label, target_help);
    if (is_open) {
        for (std::size_t i = 0; i < rows.targets.size(); ++i) {
            ImGui::PushID(static_cast<int>(i));
            const std::string line = rows.targets[i].label + " (" + rows.targets[i].present + ")";
            if (chooser_entry(line, i == rows.target)) ui.draft.target = i;
            ImGui::PopID();
            ui.describe("measurement/target/" + std::to_string(i), line, line);
        }
        ImGui::EndCombo();
    }
    if (!target.problem.empty()) wrapped_text(target.problem, colour(Tone::danger));
}

void draw_steps(const HomeMeasurement& measurement) {
    int number = 0;
    for (const std::string& step : measurement.steps) {
        dim_text(std::to_string(++number) + ".");
        ImGui::SameLine(0, grid(1));
        wrapped_text(step, colour(Tone::text));
    }
    for (const std::string& caution : measurement.cautions) {
        ImGui::Dummy({1, grid(0.5F)});
        wrapped_text("Caution: " + caution, text_colour(ColourRole::clipped));
    }
}

void draw_entries(const MeasurementUi& ui, const HomeMeasurementRows& rows) {
    draw_measurement_chooser(ui, *rows.measurement);
    ImGui::Dummy({1, grid(1)});
    for (const ReadingRow& row : rows.readings)
        draw_reading(ui, row);
    draw_result(ui, rows);
    draw_fill(ui, rows);
}

}  // namespace

void draw_home_measurement_panel(const MeasurementUi& ui) {
    const HomeMeasurementRows rows = home_measurement_rows(ui.setup(), ui.draft);
    const bool side_by_side = ImGui::GetContentRegionAvail().x > grid(150);
    if (side_by_side && ImGui::BeginTable("##measurement", 2, ImGuiTableFlags_SizingStretchSame)) {
        ImGui::TableNextColumn();
        draw_entries(ui, rows);
        ImGui::TableNextColumn();
        draw_steps(*rows.measurement);
        ImGui::EndTable();
        return;
    }
    draw_entries(ui, rows);
    ImGui::Dummy({1, grid(1)});
    draw_steps(*rows.measurement);
}

}  // namespace beamfork
