// The channels in which a view is blurred: CIE X, Y and Z, each a mixture of wavelengths that no eye can take apart. What
// the eye hardly sees of blue and red far from focus stays as faint in the picture.
#pragma once

#include <vector>

#include "base/units.hpp"

#include <glm/glm.hpp>

namespace beamfork {

/// Linear sRGB by IEC 61966-2-1.
inline const glm::mat3 xyz_from_rgb{
    {0.4124F, 0.2126F, 0.0193F}, {0.3576F, 0.7152F, 0.1192F}, {0.1805F, 0.0722F, 0.9505F}};

/// Which of white_lines the rays of a channel (0 X, 1 Y, 2 Z) have: each as often as it counts in the channel's light,
/// spread over the pupil by the multiples of an irrational number.
std::vector<std::size_t> lines_of(std::size_t channel);

/// Of the channel's light.
Micrometres mean_wavelength(std::size_t channel);

}  // namespace beamfork
