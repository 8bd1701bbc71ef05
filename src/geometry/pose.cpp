#include "geometry/pose.hpp"

#include <cmath>

namespace beamfork {

Pose inverse(const Pose& pose) {
    const glm::dmat3 back = glm::transpose(pose.axes);
    return {back, -(back * pose.origin)};
}

namespace {

// cos and sin that are exact at quarter turns, so that a straight train stays straight to the last bit.
struct Turn {
    double cosine;
    double sine;
};

Turn exact_turn(Radians angle) {
    const double degrees = to_degrees(angle).value;
    const double quarters = degrees / 90;
    if (quarters == std::round(quarters)) {
        switch ((static_cast<long>(quarters) % 4 + 4) % 4) {
        case 0: return {1, 0};
        case 1: return {0, 1};
        case 2: return {-1, 0};
        default: return {0, -1};
        }
    }
    return {std::cos(angle.value), std::sin(angle.value)};
}

}  // namespace

Pose rotation_about_x(Radians angle) {
    const auto [c, s] = exact_turn(angle);
    return {glm::dmat3{{1, 0, 0}, {0, c, s}, {0, -s, c}}, Point{0.0}};
}

Pose rotation_about_y(Radians angle) {
    const auto [c, s] = exact_turn(angle);
    return {glm::dmat3{{c, 0, -s}, {0, 1, 0}, {s, 0, c}}, Point{0.0}};
}

Pose rotation_about_z(Radians angle) {
    const auto [c, s] = exact_turn(angle);
    return {glm::dmat3{{c, s, 0}, {-s, c, 0}, {0, 0, 1}}, Point{0.0}};
}

Pose pose_facing(const Point& origin, const Direction& z, const Direction& x_hint) {
    const Direction x = glm::normalize(x_hint - glm::dot(x_hint, z) * z);
    return {glm::dmat3{x, glm::cross(z, x), z}, origin};
}

Direction mirrored(const Direction& direction, const Direction& normal) {
    return direction - 2 * glm::dot(direction, normal) * normal;
}

}  // namespace beamfork
