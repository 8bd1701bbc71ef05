// A length to hold against the picture.
#pragma once

#include <string>

namespace beamfork {

struct ScaleBar {
    double length_mm = 0;
    float length_px = 0;
    std::string text;  ///< "50 mm", "1 m"
};

/// The longest of 1, 2, 5, 10, 20 ... mm that is not longer than `longest_px`.
ScaleBar scale_bar(double mm_per_pixel, float longest_px);

}  // namespace beamfork
