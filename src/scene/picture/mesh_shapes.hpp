// Bodies as triangles: closed surfaces with outward normals, in world mm. Sharp edges have their corners
// doubled, so that each face keeps its own normal.
#pragma once

#include <vector>

#include "parts/layout.hpp"
#include "scene/picture/frame.hpp"

namespace beamfork {

/// A plane curve that is turned about the z axis: `radius` outward, `along` the axis, with the normal in the
/// same two directions. Two points with one place and two normals make a sharp edge.
struct ProfilePoint {
    double radius = 0;
    double along = 0;
    double normal_out = 1;
    double normal_along = 0;
};

/// Turns the curve about the z axis of `pose`. Walking the curve, the solid lies at the left hand when the
/// axis points up and the radius to the right.
void add_turned(Mesh& mesh,
                const Pose& pose,
                const std::vector<ProfilePoint>& profile,
                int segments);

/// A flat convex face, corners counter-clockwise from outside.
void add_face(Mesh& mesh, const std::vector<Point>& corners);

/// A convex outline in the xy plane of `pose` (counter-clockwise seen against z), from z = low to z = high.
void add_plate(
    Mesh& mesh, const Pose& pose, const std::vector<glm::dvec2>& outline, double low, double high);

/// The same from z = 0 with a round opening; the opening is made smaller where the plate would end.
void add_pierced_plate(Mesh& mesh, const Pose& pose, const PlateBody& plate, int segments);

void add_tube(Mesh& mesh, const Pose& pose, const TubeBody& tube, int segments);
void add_ring(Mesh& mesh, const Pose& pose, const RingBody& ring, int segments);
void add_glass(Mesh& mesh, const Pose& pose, const GlassBody& glass);
void add_lens(Mesh& mesh, const Pose& pose, const LensBody& lens, int segments);
/// The coating of a curved mirror alone, `depth` thick, or what lies behind it down to its flat back.
void add_dish_coating(
    Mesh& mesh, const Pose& pose, const DishBody& dish, double depth, int segments);
void add_dish_backing(
    Mesh& mesh, const Pose& pose, const DishBody& dish, double depth, int segments);

/// A closed line through the points, as separate stretches.
void add_outline(std::vector<Line>& lines, const std::vector<Point>& corners, const Line& style);

/// A circle in the xy plane of `pose`.
std::vector<Point> circle(const Pose& pose, double radius, int segments);

}  // namespace beamfork
