// The pixels in which what an eye sees is computed, channel by channel.
#pragma once

#include <array>
#include <vector>

#include <glm/glm.hpp>

namespace beamfork {

/// Pixels of a square picture about the middle of the field, x right, y up in apparent angle.
struct SightGrid {
    int side = 0;
    double scale = 1;  ///< pixels per radian
    [[nodiscard]] glm::dvec2 apparent(double column, double row) const {
        return glm::dvec2{column - side / 2.0, side / 2.0 - row} / scale;
    }
    [[nodiscard]] glm::dvec2 place(glm::dvec2 apparent) const {
        return {side / 2.0 + apparent.x * scale, side / 2.0 - apparent.y * scale};
    }
};

/// Linear light of one channel, rows from the top.
using SightPlane = std::vector<float>;
/// CIE X, Y, Z (sight_colour.hpp).
using SightPlanes = std::array<SightPlane, 3>;

}  // namespace beamfork
