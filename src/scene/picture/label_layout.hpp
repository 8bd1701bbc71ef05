// Labels that stand alone: every one that has room gets a box near its place, no two boxes overlap, and a
// leader line joins the two when they lie apart. Pixels as in scene/picture/camera.hpp: y down.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include "scene/picture/camera.hpp"
#include "scene/picture/light_cover.hpp"

namespace beamfork {

/// Width and height in pixels of a label's box, its padding included.
using LabelMeasure = std::function<glm::vec2(const Label&)>;

struct PlacedLabel {
    std::size_t label = 0;    ///< index into the labels given
    glm::vec2 low{0};         ///< upper left corner of its box
    glm::vec2 high{0};        ///< lower right corner
    glm::vec2 anchor{0};      ///< the labelled place in the picture
    glm::vec2 leader{0};      ///< the point of the box's edge nearest to the anchor
    bool has_leader = false;  ///< the box stands off: draw a line from `anchor` to `leader`
    bool operator==(const PlacedLabel&) const = default;
};

/// Greedy by priority (smaller first, then the order given): a label takes the nearest free place round its
/// anchor that hides little light and stays above the lowest `foot_px` of the picture, and is left out when there is none, when its place lies behind the viewer
/// or outside the picture. Returned in the order of placing. The first label whose place is in the picture always stays,
/// unless its box is larger than the picture.
std::vector<PlacedLabel> lay_out_labels(std::span<const Label> labels,
                                        const Camera& camera,
                                        Viewport viewport,
                                        const LabelMeasure& measure,
                                        const LightCover& light = {},
                                        float foot_px = 0);

}  // namespace beamfork
