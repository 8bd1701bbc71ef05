// A convex block of glass as what several planes leave of space: its corners and faces found from the planes.
#pragma once

#include <vector>

#include "parts/layout.hpp"

namespace beamfork {

/// What lies behind the plane through `on`, seen along `outward` (unit).
struct HalfSpace {
    Point on{0.0};
    Direction outward{0, 0, 1};
};

struct Block {
    GlassBody body;
    /// Corners of the face in each plane, in the planes' order, counter-clockwise seen from outside; empty
    /// where a plane cuts nothing off.
    std::vector<std::vector<Point>> faces;
};

/// The planes must enclose a finite block.
Block block_within(const std::vector<HalfSpace>& planes);

/// Corners in a surface's own plane, counter-clockwise seen against its z.
std::vector<glm::dvec2> outline_in(const Pose& surface, const std::vector<Point>& corners);

}  // namespace beamfork
