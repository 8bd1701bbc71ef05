// A surface of revolution about the z axis with its vertex at the origin: a plane, a sphere, or another
// conic turned about its axis. Lengths in mm.
#pragma once

#include <optional>

#include "geometry/pose.hpp"

namespace beamfork {

/// Height over the vertex plane: z = c r^2 / (1 + sqrt(1 - (1 + k) c^2 r^2)) (W. J. Smith, Modern Optical
/// Engineering, 4th ed., aspheric surfaces).
struct Conic {
    double curvature =
        0;  ///< c, 1/mm; positive: the rim lies at higher z than the vertex; 0: a plane
    double constant = 0;  ///< k: 0 sphere, -1 paraboloid, below -1 hyperboloid
    bool operator==(const Conic&) const = default;
    [[nodiscard]] bool is_plane() const { return curvature == 0; }
};

/// Height at a distance `radius` from the axis; the surface must reach that far out.
double sag(const Conic& conic, double radius);

/// Distance along a ray from a point of the vertex plane (z = 0) to the surface, negative backwards; nothing
/// when the ray passes it by. `along` is unit.
std::optional<double> distance_to(const Conic& conic, const Point& from, const Direction& along);

/// Unit normal at a point of the surface, on the side of -z at the vertex.
Direction normal_at(const Conic& conic, const Point& at);

}  // namespace beamfork
