// The axis of one eye's light near the field stop as it runs through the prisms, for measuring along it.
#pragma once

#include <vector>

#include "train/train.hpp"

namespace beamfork {

/// The folded axis from one reduced distance behind (+) or before (-) the field stop to another: its ends and every
/// corner between, in that order. Like point_near_stop (study/focus/focus_budget.hpp) it does not go back through a lens.
std::vector<Point> folded_axis(const EyePath& path, double from, double to);

}  // namespace beamfork
