// How dimensions are drawn as seen from a camera: extension lines, the line with its arrow ends, the number on it or,
// where it is too short, beside it. Pixels as in scene/picture/camera.hpp: y down.
#pragma once

#include <functional>
#include <span>
#include <utility>
#include <vector>

#include "scene/handles/dimension.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/light_cover.hpp"

namespace beamfork {

/// Width and height of the number in pixels, its padding included.
using NumberMeasure = std::function<glm::vec2(const std::string&)>;

struct DimensionArrow {
    glm::vec2 tip{0};
    glm::vec2 towards{1, 0};  ///< unit: the way it points
};

struct PlacedDimension {
    std::size_t dimension = 0;  ///< index into those given
    std::vector<std::pair<glm::vec2, glm::vec2>> extensions;
    std::vector<std::pair<glm::vec2, glm::vec2>> lines;  ///< broken where the number stands on it
    std::vector<DimensionArrow> arrows;
    PixelBox number;
};

/// Each takes the place that hides the least light and touches nothing that is `taken`; one without such a place, or
/// that points at the viewer, is left out. What is placed is taken, and its lines count as lit: names laid out with
/// the cover afterwards keep clear. `unit_px` is a step of the window's grid.
std::vector<PlacedDimension> lay_out_dimensions(std::span<const Dimension> dimensions,
                                                const Camera& camera,
                                                Viewport viewport,
                                                const NumberMeasure& measure,
                                                LightCover& cover,
                                                float unit_px);

}  // namespace beamfork
