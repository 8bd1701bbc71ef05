#include "geometry/conic.hpp"

#include <cmath>

namespace beamfork {

double sag(const Conic& conic, double radius) {
    const double c = conic.curvature;
    const double r_squared = radius * radius;
    return c * r_squared / (1 + std::sqrt(1 - (1 + conic.constant) * c * c * r_squared));
}

// All points of the conic fulfil c (x^2 + y^2 + (1 + k) z^2) - 2 z = 0. Along the ray this is a quadratic
// in the distance; the root that goes to the vertex plane as c goes to 0 is written so that it stays exact.
std::optional<double> distance_to(const Conic& conic, const Point& from, const Direction& along) {
    const double c = conic.curvature;
    const double stretch = 1 + conic.constant;
    const glm::dvec2 place{from};
    const glm::dvec2 slope{along};
    const double square = c * (glm::dot(slope, slope) + stretch * along.z * along.z);
    const double half_linear = c * glm::dot(place, slope) - along.z;
    const double constant = c * glm::dot(place, place);
    const double root_squared = half_linear * half_linear - square * constant;
    if (root_squared < 0) return std::nullopt;
    const double divisor = -half_linear + std::copysign(std::sqrt(root_squared), -half_linear);
    if (divisor == 0) return std::nullopt;
    return constant / divisor;
}

Direction normal_at(const Conic& conic, const Point& at) {
    const double c = conic.curvature;
    return glm::normalize(Direction{c * at.x, c * at.y, c * (1 + conic.constant) * at.z - 1});
}

}  // namespace beamfork
