#include "parts/convex_block.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

namespace {

constexpr double rounding = 1e-9;

bool is_inside(const std::vector<HalfSpace>& planes, const Point& at) {
    return std::all_of(planes.begin(), planes.end(), [&](const HalfSpace& plane) {
        return glm::dot(at - plane.on, plane.outward) < rounding;
    });
}

// Where three planes meet, if they meet in one point (Cramer's rule).
std::optional<Point> meeting(const HalfSpace& a, const HalfSpace& b, const HalfSpace& c) {
    const double volume = glm::dot(a.outward, glm::cross(b.outward, c.outward));
    if (std::abs(volume) < rounding) return std::nullopt;
    return (glm::dot(a.on, a.outward) * glm::cross(b.outward, c.outward)
            + glm::dot(b.on, b.outward) * glm::cross(c.outward, a.outward)
            + glm::dot(c.on, c.outward) * glm::cross(a.outward, b.outward))
           / volume;
}

int number_of(std::vector<Point>& corners, const Point& at) {
    for (std::size_t i = 0; i < corners.size(); ++i) {
        if (glm::distance(corners[i], at) < 1e-7) return static_cast<int>(i);
    }
    corners.push_back(at);
    return static_cast<int>(corners.size()) - 1;
}

// Round the face, counter-clockwise seen from outside.
void sort_round(std::vector<int>& face,
                const std::vector<Point>& corners,
                const Direction& outward) {
    Point middle{0.0};
    for (const int i : face)
        middle += corners[static_cast<std::size_t>(i)] / static_cast<double>(face.size());
    const Direction u = glm::normalize(corners[static_cast<std::size_t>(face.front())] - middle);
    const Direction v = glm::cross(outward, u);
    const auto angle = [&](int i) {
        const Point from = corners[static_cast<std::size_t>(i)] - middle;
        return std::atan2(glm::dot(from, v), glm::dot(from, u));
    };
    std::sort(face.begin(), face.end(), [&](int a, int b) { return angle(a) < angle(b); });
}

}  // namespace

Block block_within(const std::vector<HalfSpace>& planes) {
    Block block;
    std::vector<std::vector<int>> on_plane(planes.size());
    for (std::size_t a = 0; a < planes.size(); ++a) {
        for (std::size_t b = a + 1; b < planes.size(); ++b) {
            for (std::size_t c = b + 1; c < planes.size(); ++c) {
                const auto at = meeting(planes[a], planes[b], planes[c]);
                if (!at || !is_inside(planes, *at)) continue;
                const int number = number_of(block.body.corners, *at);
                for (const std::size_t plane : {a, b, c}) {
                    auto& face = on_plane[plane];
                    if (std::find(face.begin(), face.end(), number) == face.end())
                        face.push_back(number);
                }
            }
        }
    }
    for (std::size_t i = 0; i < planes.size(); ++i) {
        std::vector<Point> corners;
        if (on_plane[i].size() >= 3) {
            sort_round(on_plane[i], block.body.corners, planes[i].outward);
            for (const int number : on_plane[i])
                corners.push_back(block.body.corners[static_cast<std::size_t>(number)]);
            block.body.faces.push_back(on_plane[i]);
        }
        block.faces.push_back(std::move(corners));
    }
    return block;
}

std::vector<glm::dvec2> outline_in(const Pose& surface, const std::vector<Point>& corners) {
    std::vector<glm::dvec2> outline;
    for (const Point& corner : corners)
        outline.emplace_back(surface.point_in(corner));
    double twice = 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2& a = outline[i];
        const glm::dvec2& b = outline[(i + 1) % outline.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    if (twice < 0) std::reverse(outline.begin(), outline.end());
    return outline;
}

}  // namespace beamfork
