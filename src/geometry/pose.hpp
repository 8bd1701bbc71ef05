// Where a part or a surface stands: a rigid frame, named target-from-source so that products read as
// chains (world_from_part * part_from_surface).
//
// World axes, used everywhere: right-handed, millimetres, +z along the light at the objective, +y up,
// +x to the right of an observer who looks back along the light. A part's own frame has its origin in
// the middle of its entry face with +z along the light that enters.
#pragma once

#include "base/units.hpp"

#include <glm/glm.hpp>

namespace beamfork {

using Point = glm::dvec3;
using Direction = glm::dvec3;  ///< unit length unless said otherwise

struct Pose {
    glm::dmat3 axes{1.0};  ///< columns: the frame's x, y, z in the outer frame
    Point origin{0.0};

    [[nodiscard]] Point point_out(const Point& local) const { return axes * local + origin; }
    [[nodiscard]] Direction direction_out(const Direction& local) const { return axes * local; }
    [[nodiscard]] Point point_in(const Point& outer) const { return (outer - origin) * axes; }
    [[nodiscard]] Direction direction_in(const Direction& outer) const { return outer * axes; }
    [[nodiscard]] Direction x() const { return axes[0]; }
    [[nodiscard]] Direction y() const { return axes[1]; }
    [[nodiscard]] Direction z() const { return axes[2]; }
    bool operator==(const Pose&) const = default;
};

/// outer_from_inner * inner_from_innermost
inline Pose operator*(const Pose& outer, const Pose& inner) {
    return {outer.axes * inner.axes, outer.point_out(inner.origin)};
}
Pose inverse(const Pose& pose);

inline Pose translation(double x, double y, double z) { return {glm::dmat3(1.0), {x, y, z}}; }
/// Turns by the right-hand rule about the frame's own axis.
Pose rotation_about_x(Radians angle);
Pose rotation_about_y(Radians angle);
Pose rotation_about_z(Radians angle);

/// A frame at `origin` with the given z (unit) and an x as near as possible to `x_hint`.
Pose pose_facing(const Point& origin, const Direction& z, const Direction& x_hint);

/// `direction` mirrored in a plane with unit normal `normal`.
Direction mirrored(const Direction& direction, const Direction& normal);

}  // namespace beamfork
