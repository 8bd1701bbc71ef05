// The wavelengths that are traced: blue F, green e, red C. Focus and drawing use the middle one.
#pragma once

#include <array>
#include <cstddef>

#include "glass/glass.hpp"

namespace beamfork {

inline constexpr std::array traced_wavelengths{spectral_line::F, spectral_line::e,
                                               spectral_line::C};
constexpr std::size_t wavelength_count = traced_wavelengths.size();
constexpr std::size_t primary_wavelength = 1;
using PerWavelength = std::array<double, wavelength_count>;

}  // namespace beamfork
