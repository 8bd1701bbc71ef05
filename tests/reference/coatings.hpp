// Light at polished faces, and through a divided path. Shares from 0 to 1.
#pragma once

#include <array>

namespace reference {

/// ((n - 1) / (n + 1))^2 at normal incidence (any optics text), computed with mpmath; printed to 1e-6.
struct NormalReflectance {
    double index;
    double reflectance;
};
inline constexpr std::array normal_reflectances{
    NormalReflectance{1.458464, 0.034776},
    NormalReflectance{1.5168, 0.042165},
    NormalReflectance{1.56883, 0.049034},
    NormalReflectance{1.67271, 0.063351},
};

/// 0.5 (1 - R)^k and its magnitudes, for an ideal half-mirror behind k faces.
struct DividedLight {
    double reflectance;
    int faces;
    double share;
    double magnitudes;
};
inline constexpr std::array divided_lights{
    DividedLight{0.04216, 2, 0.45873, 0.8461}, DividedLight{0.04216, 4, 0.42086, 0.9396},
    DividedLight{0.015, 4, 0.47067, 0.8182},   DividedLight{0.005, 4, 0.49007, 0.7743},
    DividedLight{0.0025, 4, 0.49502, 0.7634},
};

/// 2.5 log10(2): an ideal half-mirror; 2.5 log10(sqrt 2): the gain of F. W. Campbell & D. G. Green, Nature 208,
/// 191-192 (1965).
inline constexpr double half_in_magnitudes = 0.752575;
inline constexpr double root_two_in_magnitudes = 0.376287;

/// Surface brightness of something extended against a naked eye of 7 mm, nothing lost: (exit pupil / 7)^2 and its
/// magnitudes (conservation of radiance; any text).
struct SurfaceBrightness {
    double exit_pupil;
    double ratio;
    double magnitudes;
};
inline constexpr std::array surface_brightnesses{
    SurfaceBrightness{1, 0.02041, 4.2255},
    SurfaceBrightness{2, 0.08163, 2.7203},
    SurfaceBrightness{3, 0.18367, 1.8399},
    SurfaceBrightness{5, 0.51020, 0.7306},
};

}  // namespace reference
