// What `check` tells of one study, in a line, as text and as JSON: one file <stem>_section.cpp each, listed in one table.
// A new study adds its file, its declaration and its line.
#pragma once

#include <span>
#include <string>

#include "study/findings/report.hpp"

#include <nlohmann/json.hpp>

namespace beamfork {

using Json = nlohmann::ordered_json;

struct CheckSection {
    std::string_view key{};  ///< of its JSON object; empty: has none of its own
    std::string_view
        study{};  ///< the panel whose study it tells, by its stem (ui/panels.hpp); empty: none
    /// For the combination as a whole; null: has no such object.
    Json (*json)(const Setup& setup, const Report& report) = nullptr;
    /// For one eye, written inside "left_eye" and "right_eye"; null: has no such object.
    Json (*eye_json)(const Setup& setup, const Report& report, std::size_t side) = nullptr;
    /// For the setup as a whole, written once at the top; null: has no such object.
    Json (*setup_json)(const Setup& setup, const Report& report) = nullptr;
    /// A heading in capitals and lines indented by two, ending in a line break; null: none. Empty: nothing to tell.
    std::string (*text)(const Setup& setup, const Report& report) = nullptr;
    /// What a reader takes home, in one line of about 75 letters; null: the short page tells all of it or nothing.
    std::string (*line)(const Setup& setup, const Report& report) = nullptr;
};

std::string focus_budget_text(const Setup& setup, const Report& report);
std::string magnification_text(const Setup& setup, const Report& report);
std::string light_at_stops_text(const Setup& setup, const Report& report);
std::string light_at_stops_line(const Setup& setup, const Report& report);

Json ways_to_focus_json(const Setup& setup, const Report& report);
std::string ways_to_focus_text(const Setup& setup, const Report& report);
std::string ways_to_focus_line(const Setup& setup, const Report& report);

Json image_quality_eye_json(const Setup& setup, const Report& report, std::size_t side);
std::string image_quality_text(const Setup& setup, const Report& report);
std::string image_quality_line(const Setup& setup, const Report& report);

Json coma_correction_json(const Setup& setup, const Report& report);
std::string coma_correction_text(const Setup& setup, const Report& report);

Json reach_table_json(const Setup& setup, const Report& report);
std::string reach_table_text(const Setup& setup, const Report& report);
std::string reach_table_line(const Setup& setup, const Report& report);
Json uncertainty_json(const Setup& setup, const Report& report);
std::string uncertainty_text(const Setup& setup, const Report& report);
std::string uncertainty_line(const Setup& setup, const Report& report);
Json tune_json(const Setup& setup, const Report& report);
std::string tune_text(const Setup& setup, const Report& report);
std::string tune_line(const Setup& setup, const Report& report);
Json other_uses_json(const Setup& setup, const Report& report);
std::string other_uses_text(const Setup& setup, const Report& report);

Json throughput_json(const Setup& setup, const Report& report, std::size_t side);
Json brightness_json(const Setup& setup, const Report& report);
std::string brightness_text(const Setup& setup, const Report& report);
std::string brightness_line(const Setup& setup, const Report& report);
Json alignment_json(const Setup& setup, const Report& report);
std::string alignment_text(const Setup& setup, const Report& report);
std::string alignment_line(const Setup& setup, const Report& report);

/// In the order in which they are told.
std::span<const CheckSection> check_sections();

}  // namespace beamfork
