// Where an eye stands behind its eyepiece, and what of it is drawn.
#pragma once

#include "parts/eyepiece_pair.hpp"

namespace beamfork {

/// Behind the field stop along the eyepiece's axis, mm.
struct EyeBehindEyepiece {
    double eye_lens = 0;  ///< the eyepiece's last lens as it is drawn (parts/eyepiece_pair.cpp)
    double pupil = 0;     ///< the exit pupil, and with it the eye's own
};
EyeBehindEyepiece eye_place(const EyepiecePair& eyepiece);

/// Of a grown-up's eye, mm (D. A. Atchison, G. Smith, "Optics of the Human Eye", 2000, ch. 1: 24 mm long, an iris
/// about 12 mm across).
constexpr double eyeball_radius_mm = 12;
constexpr double iris_radius_mm = 6;
/// The iris lies so far in front of the eyeball's middle: 24 mm long, the iris 3.6 mm behind its front.
constexpr double iris_before_middle_mm = 8.4;

}  // namespace beamfork
