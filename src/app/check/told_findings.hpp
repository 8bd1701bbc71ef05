// Findings in print, each cure told once: where it mends a second finding it is referred to by its number.
#pragma once

#include <map>
#include <string>

#include "study/findings/report.hpp"

namespace beamfork {

/// Numbers of the cures told so far, by what they are.
using ToldCures = std::map<std::string, std::size_t>;

/// With its advice and all its cures; ends in a line break.
std::string finding_text(const Finding& finding, ToldCures& told);

/// Its sentence and the best cure, or where there is none the advice.
std::string short_finding_text(const Finding& finding, ToldCures& told);

}  // namespace beamfork
