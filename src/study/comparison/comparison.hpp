// Two setups side by side: every result that an observer cares for, of both, and which of the two is better.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "study/findings/report.hpp"

namespace beamfork {

enum class Side { here, there };

/// One result of both setups. Of both eyes, the worse one counts.
struct ComparedResult {
    std::string_view key;    ///< in JSON: "focus_margin"
    std::string_view label;  ///< "Focus margin"
    std::string_view help;   ///< what it is, its formula in words and its source; which is better
    FieldUnit unit = FieldUnit::none;
    int decimals = 1;  ///< of a printed value
    double here = 0;
    double there = 0;
    bool differs = false;          ///< by more than the counting of rays makes
    std::optional<Side> better{};  ///< nothing: as good as each other, or a matter of taste
};

/// In the order in which they are told. Findings count with their severity; cures are left out.
std::vector<ComparedResult> compare_reports(const Report& here, const Report& there);

}  // namespace beamfork
