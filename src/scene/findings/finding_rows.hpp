// Findings ready to show: a word, a shape and a colour for the severity, then the sentence.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/kit/colours.hpp"
#include "scene/kit/finding_sign.hpp"
#include "study/findings/findings.hpp"

namespace beamfork {

struct Report;

/// A change that would mend the finding.
struct CureRow {
    std::string what;
    std::string verdict;               ///< "mends it, exchange a part"
    std::vector<EffectLine> effect{};  ///< gains first
    std::string cost{};                ///< in sentences; may be empty
    /// In one line: "mends it, exchange a part: edge light 70 to 75 %. Costs: ... .", for print.
    [[nodiscard]] std::string text() const;
};

struct FindingRow {
    Severity severity = Severity::note;
    std::string word;  ///< "Fails", "Poor", "Note", "Good"
    FindingSign sign = FindingSign::dot;
    ColourRole role = ColourRole::dimension;
    std::string sentence;
    std::string advice;  ///< may be empty
    std::optional<std::size_t> part;
    std::vector<CureRow> cures{};  ///< best first
    std::string no_cure{};         ///< why there is none; empty where there are or none is wanted
    bool is_that_focus_is_reached = false;
};

/// What is read at a glance, and what is read then.
struct Headline {
    std::string first;  ///< "Fails: Does not reach focus"
    std::string rest;   ///< "The drawtube would have to go 30.0 mm farther in."; may be empty
};
/// The sentence of what is wrong, parted behind its first clause; other findings are told in one.
Headline headline_of(const FindingRow& row);

std::vector<FindingRow> finding_rows(const Report& report);

/// The setup with that cure of that row's carried out.
const Setup& cured_setup(const Report& report, std::size_t row, std::size_t cure);

/// "1 fails, 2 poor", or "All is well", for a heading.
std::string finding_summary(const Report& report);

}  // namespace beamfork
