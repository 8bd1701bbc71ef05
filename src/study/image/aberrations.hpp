// What a wavefront's error is made of: its fit by Zernike's polynomials over the objective's circle, told as the
// classical aberrations.
#pragma once

#include "study/image/wavefront.hpp"

namespace beamfork {

/// Of one colour, in its waves. The coefficients are those of the wavefront at the pupil's rim: W040 of r^4, W131 of
/// r^3 cos, W222 of r^2 cos^2 (W. T. Welford, Aberrations of Optical Systems, 1986, from memory). The rms values are
/// each fault's share of the root-mean-square error over a whole pupil.
struct Aberrations {
    double spherical = 0;  ///< W040, signed: positive where the rim's path is longer
    double coma = 0;
    double astigmatism = 0;
    double spherical_rms = 0;
    double coma_rms = 0;
    double astigmatism_rms = 0;
};

/// Least squares over the rays that passed. Tilt and defocus are fitted too, so the focus need only be near: a shift
/// of d mm away from it counts as d s^4 / 8 of W040 for a rim at the sine s.
Aberrations aberrations(const Wavefront& wavefront, const Point& focus);

}  // namespace beamfork
