// The opening of a surface, in the surface's own xy plane (mm): what is inside lets light through.
#pragma once

#include <variant>
#include <vector>

#include <glm/glm.hpp>

namespace beamfork {

/// No edge at all.
struct Unbounded {
    bool operator==(const Unbounded&) const = default;
};

/// A round opening about the surface's origin; `radius` > 0.
struct Circle {
    double radius = 1;
    bool operator==(const Circle&) const = default;
};

/// A convex opening; at least three corners, counter-clockwise seen against +z.
struct Polygon {
    std::vector<glm::dvec2> corners;
    bool operator==(const Polygon&) const = default;
};

/// An ellipse with half axes along x and y, both > 0.
struct Ellipse {
    glm::dvec2 half_axes{1};
    glm::dvec2 centre{0};
    bool operator==(const Ellipse&) const = default;
};

using Aperture = std::variant<Unbounded, Circle, Polygon, Ellipse>;

/// True on the edge as well.
bool contains(const Aperture& aperture, const glm::dvec2& at);

/// Rectangle about the origin with full widths (mm).
Polygon rectangle(double width_x, double width_y);

/// Distance from the origin to the nearest edge (infinite for an unbounded opening).
double inner_radius(const Aperture& aperture);

/// Corners of the outline, counter-clockwise; a circle or ellipse is drawn with `segments` corners.
std::vector<glm::dvec2> outline(const Aperture& aperture, int segments);

/// Share of a disc of radius `beam_radius`, `offset` away from the middle of a round hole of radius
/// `hole_radius`, that passes: the overlap of two circles over the disc's area, 0..1
/// (E. W. Weisstein, "Circle-Circle Intersection", MathWorld, Eq. 14).
double overlap_share(double hole_radius, double beam_radius, double offset);

}  // namespace beamfork
