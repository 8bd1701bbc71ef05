// Shifters that are made for a stated length of glass: what they take off the wavefront.
//
// Such a lens adds the opposite of the error of a plane plate: off the wavefront goes k s^4 + (t / 2)(1/n_e - 1/n) s^2
// for glass of length t and a ray at the sine s from the middle ray of the beam behind the lens, with k such that at
// the rim of the stated cone the plate's whole spherical error t [sqrt(n^2 - s^2) - n] + (t / n)(1 - cos) is met
// (W. J. Smith, Modern Optical Engineering, 4th ed., sec. 7.8). The lens's own heights stay in proportion to the sines,
// so it cancels that much glass at any beam, up to the terms of sixth order. Errors off axis are left as they are.
#pragma once

#include <vector>

#include "study/image/wavefront.hpp"

namespace beamfork {

/// One corrected shifter of a path.
struct GlassCorrection {
    Millimetres glass{0};
    PerWavelength index{};  ///< of the first glass that follows it
    double rim_sine = 0;    ///< of the stated cone behind the lens; 0: third order only
    double later_factor =
        1;  ///< of the lenses behind it: its beam is that much faster than the one that arrives
};

/// Shifters without glass behind them correct nothing.
std::vector<GlassCorrection> glass_corrections(const Setup& setup, const EyePath& path);

/// Takes them off the wavefront of that traced wavelength, whose middle ray runs along `chief`.
void correct(Wavefront& wavefront,
             const std::vector<GlassCorrection>& corrections,
             std::size_t wavelength,
             const Direction& chief);

}  // namespace beamfork
