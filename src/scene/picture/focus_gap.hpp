// When an image counts as in focus, and the words for how far it is off.
#pragma once

#include <string>

#include "study/findings/report.hpp"

namespace beamfork {

/// Within the depth of focus (study/focus/diffraction.hpp) of where that eye wants it.
bool is_in_focus(const Report& report, Eye eye);

/// "focus 30.0 mm short" for a positive gap (the image falls before its place), "focus 4.0 mm too far".
std::string gap_text(Millimetres gap);

}  // namespace beamfork
