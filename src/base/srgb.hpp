// The curve between light and the number by which a screen is told of it (sRGB), both 0..1 for one channel.
//
// IEC 61966-2-1:1999, "Multimedia systems and equipment. Colour measurement and management. Part 2-1: Default RGB
// colour space, sRGB", section 5.2. Shaders have a quicker one, shaders/common.glsl.
#pragma once

#include <cmath>
#include <concepts>

namespace beamfork {

/// Light of an encoded value.
template <std::floating_point Real>
Real linear_from_srgb(Real encoded) {
    if (encoded <= Real(0.04045)) return encoded / Real(12.92);
    return std::pow((encoded + Real(0.055)) / Real(1.055), Real(2.4));
}

/// Encoded value of so much light.
template <std::floating_point Real>
Real srgb_from_linear(Real linear) {
    if (linear <= Real(0.0031308)) return Real(12.92) * linear;
    return Real(1.055) * std::pow(linear, 1 / Real(2.4)) - Real(0.055);
}

}  // namespace beamfork
