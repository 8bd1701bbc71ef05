// When an image counts as in focus, and the words for how far it is off.
#pragma once

#include <string>

#include "study/findings/report.hpp"

namespace beamfork {

/// Quarter-wave depth of focus to either side, 2 lambda N^2 (from lambda / (2 NA^2)), mm.
double depth_of_focus(const Report& report);

/// "focus 30.0 mm short" for a positive gap (the image falls before its place), "focus 4.0 mm too far".
std::string gap_text(double gap);

}  // namespace beamfork
