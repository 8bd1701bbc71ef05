// Bodies and rays of the picture laid flat onto paper.
#pragma once

#include <vector>

#include "scene/picture/frame.hpp"
#include "scene/sheet/sheet_svg.hpp"

namespace beamfork {

/// The plane of a drawing: two unit vectors of the world, `right` and `up` on paper, and its scale.
struct PaperPlane {
    glm::vec3 right{0, 0, 1};
    glm::vec3 up{0, 1, 0};
    SheetSvg::Spot origin{0};  ///< where the world's origin comes to lie
    double units_per_mm = 1;
    [[nodiscard]] SheetSvg::Spot flat(glm::vec3 world) const {
        return origin + units_per_mm * SheetSvg::Spot{glm::dot(right, world), -glm::dot(up, world)};
    }
};

/// The plane at the scale at which `bounds` fills that much paper, centred in it.
PaperPlane
fit_plane(PaperPlane plane, const Bounds& bounds, SheetSvg::Spot corner, SheetSvg::Spot size);

/// Corners of the smallest convex outline round the spots, in order. Monotone chain: A. M. Andrew, "Another
/// efficient algorithm for convex hulls in two dimensions", Information Processing Letters 9 (1979).
SheetSvg::Spots convex_outline(SheetSvg::Spots spots);

/// What of it lies within `bounds`: meshes and light whole or not at all, so that what stands in front or behind does
/// not show through.
Frame within_bounds(const Frame& frame, const Bounds& bounds);

/// Bodies as outlines, glass over metal, then light: undivided, left (solid) and right (dashed).
void draw_flat_bodies(SheetSvg& svg, const Frame& frame, const PaperPlane& plane);
void draw_flat_light(SheetSvg& svg, const Frame& frame, const PaperPlane& plane);
/// Where the image really is, and the dimensions of a gap; their words stand in a margin that begins at x = `margin`, each
/// with a leader to its place, so that none covers what it tells of.
void draw_flat_focus(SheetSvg& svg, const Frame& frame, const PaperPlane& plane, double margin);
/// How wide that margin must be; 0 where nothing is told.
double focus_margin(const Frame& frame);
/// A bar of a round length with its mm, its left end at `at`.
void draw_scale_bar(SheetSvg& svg, const PaperPlane& plane, SheetSvg::Spot at);

}  // namespace beamfork
