// Home measurements worked by hand. Lengths in mm, angles in degrees.
#pragma once

#include <array>

namespace reference {

/// A star on the celestial equator moves 15.0411 arcseconds in a second of time: 360 x 3600 / 86164.0905
/// (mean sidereal day; P. K. Seidelmann (ed.), Explanatory Supplement to the Astronomical Almanac, 1992,
/// from memory); to 1e-4.
inline constexpr double sidereal_arcseconds_per_second = 15.0411;

/// Field stop F x 15.0411" t cos(declination) / 206264.806", worked by hand; to 1e-3.
struct Drift {
    double focal_length;
    double seconds;
    double declination;
    double field_stop;
};
inline constexpr std::array drifts{
    Drift{1000, 120, 0, 8.7505},   // 1804.93" = 8.7505 mrad
    Drift{700, 400, 0, 20.4179},   // 6016.44" = 29.1685 mrad
    Drift{1000, 240, 60, 8.7505},  // cos 60 = 1/2
};

/// Standard error of the mean of 10, 11, 12: standard deviation 1, over the root of 3 (GUM 4.2.3).
inline constexpr double standard_error_of_three = 0.57735;

}  // namespace reference
