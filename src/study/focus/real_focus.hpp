// Where traced rays come together near each field stop: the focus by real rays, to be held against the
// paraxial one, and how sharp it is.
#pragma once

#include "trace/sampling.hpp"

namespace beamfork {

/// Distances behind the field stop along its axis (negative: before it), for light from the middle
/// of the field. Rays are not clipped. What lies before the last glass face is told in air-equivalent mm.
struct RealFocus {
    Millimetres near_axis;  ///< of rays at 1/100 of the aperture: agrees with the paraxial image
    Millimetres best;       ///< smallest root-mean-square spot of the full aperture
    Millimetres marginal;   ///< of rays at the rim of the aperture
    Millimetres spot_rms;   ///< radius of the spot at the best focus
    glm::dvec2 centre{0};   ///< of the best spot, in the field stop's frame
};

RealFocus real_focus(const Train& train, Eye eye, std::size_t wavelength = primary_wavelength);

}  // namespace beamfork
