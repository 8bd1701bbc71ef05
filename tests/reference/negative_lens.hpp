// The thin negative lens as a focus shifter: 1/s - 1/|f| = 1/d, M = d/s = 1 + d/|f|, gain d - s (W. J. Smith, Modern
// Optical Engineering, 4th ed., thin-lens equation). Lengths in mm.
#pragma once

#include <array>

namespace reference {

/// A lens from what its maker states: factor and gain; to 1e-5. The first two pairs: common practice, no source; the
/// others are examples.
struct StatedLens {
    double factor;
    double gain;
    double image_distance;
    double object_distance;
    double focal_length;  ///< without its sign
};
inline constexpr std::array stated_lenses{
    StatedLens{2.6, 65, 105.62500, 40.62500, 66.01562},
    StatedLens{1.7, 35, 85.00000, 50.00000, 121.42857},
    StatedLens{2.0, 40, 80.00000, 40.00000, 80.00000},
    StatedLens{1.25, 20, 100.00000, 80.00000, 400.00000},
};

/// The lens of the first pair, |f| = 66.015625, at other distances; to 1e-5.
inline constexpr double moved_lens_focal_length = 66.015625;
struct MovedLens {
    double image_distance;
    double factor;
    double object_distance;
    double gain;
};
inline constexpr std::array moved_lenses{
    MovedLens{80, 2.21183, 36.16907, 43.83093},
    MovedLens{110, 2.66627, 41.25610, 68.74390},
    MovedLens{140, 3.12071, 44.86159, 95.13841},
    MovedLens{170, 3.57515, 47.55048, 122.44952},
};

/// A mirror diagonal of 80 mm and a splitter of 100 mm of glass (n = 1.5168) and 30 mm of air: back focus they need
/// alone, with that lens at the splitter's nose, and with it in front of the diagonal; to 1e-4 (factor to 1e-5).
/// Worked out outside this program by the same algebra.
inline constexpr double diagonal_air = 80;
inline constexpr double splitter_glass = 100;
inline constexpr double splitter_index = 1.5168;
inline constexpr double splitter_air = 30;
inline constexpr double needed_without_lens = 175.92827;
struct LensedBudget {
    double image_distance;
    double needed;
    double factor;
    double gain;
};
inline constexpr LensedBudget lens_at_nose{95.92827, 119.10468, 2.45311, 56.82359};
inline constexpr LensedBudget lens_before_diagonal{175.92827, 48.00293, 3.66495, 127.92534};

}  // namespace reference
