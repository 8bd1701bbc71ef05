// What is measured in the picture of one part: its length along the light and its narrowest clear opening, as an
// engineering drawing would dimension them; of the focuser, what its travel leaves on either side; of the head, the
// distance between the eyes. World millimetres.
//
// By how much focus falls short has its own dimension, which is part of the picture (scene/picture/focus_gap.hpp).
#pragma once

#include <string>
#include <vector>

#include "study/findings/report.hpp"

namespace beamfork {

enum class DimensionKind {
    along,  ///< from one point to another; the line stands beside the body
    across  ///< a clear width, square to the axis: the line lies across the opening
};

struct Dimension {
    DimensionKind kind = DimensionKind::along;
    Point from{0.0};  ///< across: the opening's middle
    Point to{0.0};    ///< across: a point farther along its axis
    double clear =
        0;  ///< along: how far the body reaches beside the points; across: half the width, mm
    Direction free_side{0.0};  ///< where a line had best stand; 0: either side
    bool number_before =
        false;         ///< where the line is too short for it: beyond `from` rather than `to`
    std::string text;  ///< "12.0 mm", "ø 25.0 mm"
};

/// Of a part as the report has placed it; of the left arm where there are two. Empty for what has no body.
std::vector<Dimension> part_dimensions(const Setup& setup, const Report& report, std::size_t part);

}  // namespace beamfork
