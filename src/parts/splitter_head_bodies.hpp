// What of a splitter head's housing can be seen: nose, floor, seats, and the rods and carriages of sliding arms.
#pragma once

#include "parts/splitter_head.hpp"

namespace beamfork {

/// An arm as it stands: `frame` has the arm along its y, `length` is from the entry axis to the eyepiece's.
struct StandingArm {
    Eye eye = Eye::left;
    Pose frame;
    double length = 0;
    HeadInside inside;
};

/// Adds the housing to a layout whose exit stands. What both arms share comes with the left one.
void add_housing(PartLayout& layout, const SplitterHead& head, const StandingArm& arm);

}  // namespace beamfork
