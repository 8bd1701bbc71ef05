// Where traced rays come together near each field stop: the focus by real rays, to be held against the
// paraxial one, and how sharp it is.
#pragma once

#include "trace/sampling.hpp"

namespace beamfork {

/// Distances in mm behind the field stop along its axis (negative: before it), for light from the middle
/// of the field. Rays are not clipped. What lies before the last glass face is told in air-equivalent mm.
struct RealFocus {
    double near_axis = 0;  ///< of rays at 1/100 of the aperture: agrees with the paraxial image
    double best = 0;       ///< smallest root-mean-square spot of the full aperture
    double marginal = 0;   ///< of rays at the rim of the aperture
    double spot_rms = 0;   ///< radius of the spot at the best focus, mm
    glm::dvec2 centre{0};  ///< of the best spot, in the field stop's frame
};

RealFocus real_focus(const Train& train, Eye eye, std::size_t wavelength = primary_wavelength);

}  // namespace beamfork
