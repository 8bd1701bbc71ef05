#include "parts/body_reach.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace beamfork {

namespace {

// The direction as the body sees it, and where the body's origin lies along it.
struct Looking {
    Direction along;
    double origin = 0;

    [[nodiscard]] double at(const Point& local) const { return origin + glm::dot(along, local); }
    // A disc of that radius about the body's axis at z.
    [[nodiscard]] double disc(double radius, double z) const {
        return at({0, 0, z}) + radius * std::hypot(along.x, along.y);
    }
    [[nodiscard]] double outline(const std::vector<glm::dvec2>& corners, double thickness) const {
        double most = -std::numeric_limits<double>::infinity();
        for (const glm::dvec2& corner : corners) {
            most = std::max({most, at({corner, 0}), at({corner, thickness})});
        }
        return most;
    }
};

double reach(const TubeBody& tube, const Looking& look) {
    return std::max(look.disc(tube.outer_radius, 0), look.disc(tube.outer_radius, tube.length));
}
double reach(const RingBody& ring, const Looking& look) { return look.disc(ring.outer_radius, 0); }
double reach(const GlassBody& glass, const Looking& look) {
    double most = -std::numeric_limits<double>::infinity();
    for (const Point& corner : glass.corners)
        most = std::max(most, look.at(corner));
    return most;
}
double reach(const MirrorBody& mirror, const Looking& look) {
    return look.outline(mirror.outline, mirror.thickness);
}
double reach(const LensBody& lens, const Looking& look) {
    const double edge = lens.edge_thickness / 2;
    const double middle = edge + std::max(0.0, lens.bulge) / 2;
    return std::max({look.disc(lens.radius, -edge - lens.bowl),
                     look.disc(lens.radius, edge - lens.bowl), look.at({0, 0, -middle}),
                     look.at({0, 0, middle})});
}
double reach(const PlateBody& plate, const Looking& look) {
    return look.outline(plate.outline, plate.thickness);
}
double reach(const DishBody& dish, const Looking& look) {
    return std::max(look.disc(dish.radius, 0), look.disc(dish.radius, dish.thickness));
}

}  // namespace

double reach_of(const BodyShape& shape, const Pose& outer_from_body, const Direction& direction) {
    const Looking look{outer_from_body.direction_in(direction),
                       glm::dot(outer_from_body.origin, direction)};
    return std::visit([&](const auto& one) { return reach(one, look); }, shape);
}

}  // namespace beamfork
