// Where in the picture the light, the bodies, the field stops and the dimensions are, as a coarse grid of cells: names
// keep off them.
#pragma once

#include <vector>

#include "scene/picture/camera.hpp"

namespace beamfork {

/// Pixels that words keep free at the picture's edge and between their boxes.
constexpr float label_margin_px = 4;

/// A rectangle of the picture, pixels: upper left and lower right corner.
struct PixelBox {
    glm::vec2 low{0};
    glm::vec2 high{0};
    bool operator==(const PixelBox&) const = default;
};

/// Whether a line from one place to another meets the box.
bool crosses(glm::vec2 from, glm::vec2 to, const PixelBox& box);

struct LightCover {
    int columns = 0;
    int rows = 0;
    std::vector<bool> lit;        ///< row by row, from the upper left
    std::vector<PixelBox> taken;  ///< by other things: no name may touch one
    PixelBox core;  ///< round the focuser, the head and the eyepieces: names stand beside it

    /// Share of the cells under a box (pixels) that are lit, 0..1; 0 for an empty cover.
    [[nodiscard]] float share_under(glm::vec2 low, glm::vec2 high) const;
    bool operator==(const LightCover&) const = default;
};

/// Side of a cell in pixels.
constexpr float cover_cell_px = 12;

/// Marks the cells along a line of the picture, pixels.
void cover_line(LightCover& cover, glm::vec2 from, glm::vec2 to);

LightCover light_cover(const Frame& frame, const Camera& camera, Viewport viewport);

}  // namespace beamfork
