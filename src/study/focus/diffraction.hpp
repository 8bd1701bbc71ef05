// The limits that light's waves set to every image, in green (the e line): how wide a perfect star is, and how far an
// image may lie from where it is wanted before that is seen.
#pragma once

#include "base/units.hpp"
#include "train/train.hpp"

namespace beamfork {

/// Radius of the Airy disc in wavelengths times the f-number, and its angle in wavelengths over the aperture: the first
/// zero of J1 over pi, to the digits of common use (W. J. Smith, Modern Optical Engineering, 4th ed., sec. 9.10).
constexpr double airy_waves = 1.22;

constexpr Millimetres green_wavelength() {
    return to_millimetres(traced_wavelengths[primary_wavelength]);
}

/// First dark ring of a perfect star's image behind a cone of that f-number.
constexpr Millimetres airy_radius(double focal_ratio) {
    return airy_waves * green_wavelength() * focal_ratio;
}

/// The same as an angle on the sky: the closest double star that a perfect telescope tells apart.
constexpr Radians airy_angle(Millimetres aperture) {
    return {airy_waves * green_wavelength() / aperture};
}

/// To either side: a quarter wave of defocus, 2 wavelength N^2 (derived from wavelength / (2 NA^2)).
constexpr Millimetres depth_of_focus(double focal_ratio) {
    return 2 * green_wavelength() * focal_ratio * focal_ratio;
}

}  // namespace beamfork
