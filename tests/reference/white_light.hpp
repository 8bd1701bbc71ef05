// Peak of a star in white light behind a plane plate of glass, before any eye looks and through the reduced chromatic
// eye: printed by white_light.py beside this file, which says how and knows nothing of this program.
#pragma once

#include <array>

namespace reference {

/// Glass of that thickness (mm) in a cone of that f-number, through an eye behind an exit pupil of that width (mm; 0:
/// no eye). To four digits.
struct WhitePeak {
    const char* glass;
    double thickness;
    double f_number;
    double exit_pupil;
    double peak;
};
// clang-format off
inline constexpr std::array white_peaks{
    WhitePeak{"N-BAK4", 112, 5, 0, 0.3177},
    WhitePeak{"N-BAK4", 112, 7, 0, 0.5781},
    WhitePeak{"N-BAK4", 112, 10, 0, 0.8245},
    WhitePeak{"N-BAK4", 112, 7, 0.5, 0.5873},
    WhitePeak{"N-BAK4", 112, 7, 1, 0.6163},
    WhitePeak{"N-BAK4", 112, 7, 1.5, 0.6685},
    WhitePeak{"N-BAK4", 112, 7, 2, 0.7486},
    WhitePeak{"N-BAK4", 112, 7, 2.5, 0.8571},
    WhitePeak{"N-BAK4", 112, 7, 3, 0.9673},
    WhitePeak{"N-BAK4", 112, 7, 3.6, 0.9325},
    WhitePeak{"N-BAK4", 112, 7, 5, 0.4622},
    WhitePeak{"N-BAK4", 0, 7, 0.5, 0.9994},
    WhitePeak{"N-BAK4", 0, 7, 1, 0.9901},
    WhitePeak{"N-BAK4", 0, 7, 1.5, 0.9545},
    WhitePeak{"N-BAK4", 0, 7, 2, 0.8804},
    WhitePeak{"N-BAK4", 0, 7, 2.5, 0.7722},
    WhitePeak{"N-BAK4", 0, 7, 3, 0.6470},
    WhitePeak{"N-BAK4", 0, 7, 3.6, 0.5050},
    WhitePeak{"N-BAK4", 0, 7, 5, 0.2915},
    WhitePeak{"N-BAK4", 150, 4, 2, 0.1459},
    WhitePeak{"N-BAK4", 250, 5, 1.5, 0.1550},
    WhitePeak{"N-BAK4", 112, 10, 7, 0.1746},
    WhitePeak{"N-BK7", 100, 6, 0, 0.5566},
    WhitePeak{"N-BK7", 100, 6, 3, 0.9377},
    WhitePeak{"N-BAF10", 100, 6, 0, 0.4213},
    WhitePeak{"N-BAF10", 100, 6, 3, 0.7203},
    WhitePeak{"fused silica", 100, 6, 0, 0.5934},
    WhitePeak{"fused silica", 100, 6, 3, 0.9607},
    WhitePeak{"F2", 40, 6, 0, 0.6846},
    WhitePeak{"F2", 40, 6, 3, 0.9843},
    WhitePeak{"N-SF11", 40, 6, 0, 0.5389},
    WhitePeak{"N-SF11", 40, 6, 3, 0.9254},
    WhitePeak{"N-SF5", 40, 6, 0, 0.6348},
    WhitePeak{"N-SF5", 40, 6, 3, 0.9933},
};
// clang-format on

}  // namespace reference
