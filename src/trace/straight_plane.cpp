#include "trace/straight_plane.hpp"

#include <algorithm>

namespace beamfork {

namespace {

// Rectangles are tested with two products rather than four.
std::optional<glm::dvec2> half_widths(const Polygon& polygon) {
    if (polygon.corners.size() != 4) return std::nullopt;
    const glm::dvec2 corner = glm::abs(polygon.corners.front());
    const bool is_centred =
        std::all_of(polygon.corners.begin(), polygon.corners.end(),
                    [&](const glm::dvec2& other) { return glm::abs(other) == corner; });
    const glm::dvec2 turned = polygon.corners[0] + polygon.corners[2];
    if (!is_centred || turned != glm::dvec2{0} || polygon.corners[0] == polygon.corners[1])
        return std::nullopt;
    return corner;
}

void set_scaled_axes(StraightPlane& plane,
                     const StraightFrame& frame,
                     glm::dvec2 half,
                     glm::dvec2 centre) {
    plane.u = frame.axes[0] / half.x;
    plane.v = frame.axes[1] / half.y;
    plane.from_u = glm::dot(plane.u, frame.origin) + centre.x / half.x;
    plane.from_v = glm::dot(plane.v, frame.origin) + centre.y / half.y;
}

void set_sides(StraightPlane& plane, const StraightFrame& frame, const Polygon& polygon) {
    const auto& corners = polygon.corners;
    for (std::size_t i = 0, last = corners.size() - 1; i < corners.size(); last = i++) {
        const glm::dvec2 edge = corners[i] - corners[last];
        EdgeSide side;
        side.along = edge.x * frame.axes[1] - edge.y * frame.axes[0];
        const Point corner = frame.origin + frame.axes * Point{corners[last], 0};
        side.from = glm::dot(side.along, corner);
        plane.sides.push_back(side);
    }
}

}  // namespace

StraightFrame frame_of(const Isometry& straight_from_world, const Pose& pose) {
    return {straight_from_world.turn * pose.axes, straight_from_world.point(pose.origin)};
}

StraightPlane
plane_of(const PlacedSurface& surface, const StraightFrame& frame, std::size_t index, double n) {
    StraightPlane plane;
    plane.normal = frame.axes[2];
    plane.offset = glm::dot(plane.normal, frame.origin);
    plane.centre = frame.origin;
    plane.is_obstruction = surface.kind == SurfaceKind::obstruction;
    plane.reflects_totally = surface.kind == SurfaceKind::total_reflection;
    plane.steepest = n * n - 1;
    plane.surface = index;
    plane.code = end_code(index, 0);
    if (const auto* circle = std::get_if<Circle>(&surface.aperture)) {
        plane.edge = EdgeShape::circle;
        plane.radius_squared = circle->radius * circle->radius;
    } else if (const auto* ellipse = std::get_if<Ellipse>(&surface.aperture)) {
        plane.edge = EdgeShape::ellipse;
        set_scaled_axes(plane, frame, ellipse->half_axes, ellipse->centre);
    } else if (const auto* polygon = std::get_if<Polygon>(&surface.aperture)) {
        const auto half = half_widths(*polygon);
        plane.edge = half ? EdgeShape::rectangle : EdgeShape::polygon;
        if (half) {
            set_scaled_axes(plane, frame, *half, {0, 0});
        } else {
            set_sides(plane, frame, *polygon);
        }
    }
    return plane;
}

}  // namespace beamfork
