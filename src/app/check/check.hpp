// What `beamfork check` says of a setup: as text for people and as JSON for programs
// (assets/check.schema.json describes the JSON).
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "document/setup_file.hpp"
#include "study/findings/report.hpp"
#include "study/results/results.hpp"

namespace beamfork {

/// One eyepiece pair with one observer and one target.
struct Combination {
    Choice choice;
    Report report;
};

/// Which combinations a check looks at, beside the reach table.
enum class CheckedPairs : std::uint8_t {
    chosen,  ///< the one that the file chooses: all that the text tells
    every,   ///< as focus/combinations.hpp lists them: as JSON tells
};

struct CheckedSetup {
    Setup setup;
    std::vector<Combination> combinations;
    std::size_t chosen = 0;  ///< the one the file chooses
    [[nodiscard]] bool
    is_poor() const;  ///< the chosen combination fails or is poor, sharpness apart
};

/// Studies the chosen combination by `effort`, with what would mend it; the others, if wanted, by few rays (0.1 % of light).
Result<CheckedSetup>
check_setup(const Setup& setup, CheckedPairs pairs, ClippingEffort effort = {});

/// On one screen, of about 50 lines: what matters most, the best cure of each, the budget, and a line a study that names
/// where to read on.
std::string short_check_text(const CheckedSetup& checked);
/// All findings with all cures, and every study in full.
std::string check_text(const CheckedSetup& checked);
/// Every study of that panel in full; its stem is one of `told_studies`.
std::string study_text(const CheckedSetup& checked, std::string_view study);
/// Stems of the panels whose studies can be told in text, in order, each once.
std::vector<std::string> told_studies();
/// Every tolerance of two-eye alignment, and step by step whether the telescope or the head is out of collimation.
std::string two_eyes_page(const CheckedSetup& checked);
/// What the model leaves out or takes for granted.
std::string assumptions_page();
/// The results that the JSON tells of each combination as a whole, in order, each under its key with its unit.
std::span<const ResultId> results_of_a_combination();
/// Of CheckedPairs::every.
std::string check_json(const CheckedSetup& checked);

}  // namespace beamfork
