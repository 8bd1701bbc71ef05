// What every study asks of the telescope, whichever kind it is.
#pragma once

#include "base/units.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// Of the telescope alone, at the focus its datasheet gives.
struct TelescopeFacts {
    Millimetres aperture{0};
    Millimetres focal_length{0};
    Millimetres back_focus{0};   ///< focal plane behind the drawtube's rear face, racked fully in
    Millimetres obstruction{0};  ///< diameter of what stands in the middle of the light; 0: nothing
};

/// The setup must have a telescope (order_fault tells).
TelescopeFacts telescope_of(const Setup& setup);

}  // namespace beamfork
