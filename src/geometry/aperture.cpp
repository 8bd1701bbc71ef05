#include "geometry/aperture.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/contract.hpp"

namespace beamfork {

namespace {

double cross(const glm::dvec2& a, const glm::dvec2& b) { return a.x * b.y - a.y * b.x; }

bool inside(const Polygon& polygon, const glm::dvec2& at) {
    const auto& corners = polygon.corners;
    for (std::size_t i = 0, last = corners.size() - 1; i < corners.size(); last = i++) {
        if (cross(corners[i] - corners[last], at - corners[last]) < 0) return false;
    }
    return true;
}

}  // namespace

bool contains(const Aperture& aperture, const glm::dvec2& at) {
    if (const auto* circle = std::get_if<Circle>(&aperture)) {
        return glm::dot(at, at) <= circle->radius * circle->radius;
    }
    if (const auto* polygon = std::get_if<Polygon>(&aperture)) return inside(*polygon, at);
    if (const auto* ellipse = std::get_if<Ellipse>(&aperture)) {
        const glm::dvec2 share = (at - ellipse->centre) / ellipse->half_axes;
        return glm::dot(share, share) <= 1;
    }
    return true;
}

Polygon rectangle(double width_x, double width_y) {
    BEAMFORK_EXPECTS(width_x > 0 && width_y > 0);
    const double x = width_x / 2;
    const double y = width_y / 2;
    return {{{-x, -y}, {x, -y}, {x, y}, {-x, y}}};
}

double inner_radius(const Aperture& aperture) {
    if (const auto* circle = std::get_if<Circle>(&aperture)) return circle->radius;
    double nearest = std::numeric_limits<double>::infinity();
    if (const auto* polygon = std::get_if<Polygon>(&aperture)) {
        const auto& corners = polygon->corners;
        for (std::size_t i = 0, last = corners.size() - 1; i < corners.size(); last = i++) {
            const glm::dvec2 edge = corners[i] - corners[last];
            nearest = std::min(nearest, cross(edge, -corners[last]) / glm::length(edge));
        }
    }
    if (std::holds_alternative<Ellipse>(aperture)) {
        constexpr int fine = 720;  // nearest to a ten-thousandth
        for (const glm::dvec2& edge : outline(aperture, fine))
            nearest = std::min(nearest, glm::length(edge));
    }
    return nearest;
}

std::vector<glm::dvec2> outline(const Aperture& aperture, int segments) {
    if (const auto* polygon = std::get_if<Polygon>(&aperture)) return polygon->corners;
    Ellipse round;
    if (const auto* circle = std::get_if<Circle>(&aperture)) {
        round.half_axes = glm::dvec2{circle->radius};
    } else if (const auto* ellipse = std::get_if<Ellipse>(&aperture)) {
        round = *ellipse;
    } else {
        return {};
    }
    std::vector<glm::dvec2> corners;
    for (int i = 0; i < segments; ++i) {
        const double angle = 2 * std::numbers::pi * i / segments;
        corners.push_back(round.centre
                          + round.half_axes * glm::dvec2{std::cos(angle), std::sin(angle)});
    }
    return corners;
}

double overlap_share(double hole_radius, double beam_radius, double offset) {
    const double R = hole_radius;
    const double r = beam_radius;
    const double h = std::abs(offset);
    if (h >= R + r) return 0;
    if (h <= std::abs(R - r)) return std::min(1.0, (R * R) / (r * r));
    const double beam_angle =
        std::acos(std::clamp((h * h + r * r - R * R) / (2 * h * r), -1.0, 1.0));
    const double hole_angle =
        std::acos(std::clamp((h * h + R * R - r * r) / (2 * h * R), -1.0, 1.0));
    const double kite = (-h + r + R) * (h + r - R) * (h - r + R) * (h + r + R);
    const double area =
        r * r * beam_angle + R * R * hole_angle - std::sqrt(std::max(0.0, kite)) / 2;
    return area / (std::numbers::pi * r * r);
}

}  // namespace beamfork
