// The train with the light of two stars alone: one in the middle of the field and one at its edge, each in a hue of its
// own, and the objective painted by what becomes of the second one's light.
#pragma once

#include "scene/picture/picture.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

/// A star at the edge of the darker eye's field, in that direction in which the light that arrives is nearest to the
/// edge's mean, so that what is seen of it is what is told of the edge.
struct EdgeStar {
    Eye eye = Eye::left;
    glm::dvec2 at{1, 0};  ///< on that eye's field stop, in units of its radius
    FieldSlope field{0, 0};
};
EdgeStar edge_star(const Report& report);

Frame star_picture(const Setup& setup, const Report& report, const PictureEffort& effort);

}  // namespace beamfork
