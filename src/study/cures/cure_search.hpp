// The search for cures: every idea's setup is studied anew and set against every finding of the report.
#pragma once

#include <functional>
#include <vector>

#include "study/findings/report.hpp"

namespace beamfork {

/// For each finding of the report, by its index: what would mend it, best first, at most `most_cures`. Those
/// that remove it come before those that lessen it by a degree, then those that spoil nothing else, then the easiest
/// to go back on, then those that change the magnification least. A change that makes something else fail is
/// no cure, nor one that leaves more findings that fail (or as many, and more that are poor), nor one that makes a missed
/// focus or a thin margin worse; and nothing that takes half of the field is one for sharpness. `is_given_up` is asked before each idea, not always on this thread; when it says so, what is found so far is returned.
std::vector<std::vector<Cure>>
find_cures(const Setup& setup, const Report& report, const std::function<bool()>& is_given_up = {});
constexpr std::size_t most_cures = 4;

/// The report with its findings' cures, sought to the end.
void add_cures(const Setup& setup, Report& report);

/// Of findings that need mending: all but those that praise, and of sharpness only what is poor.
bool wants_cure(const Finding& finding);

}  // namespace beamfork
