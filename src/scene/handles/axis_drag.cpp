#include "scene/handles/axis_drag.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace beamfork {

namespace {

constexpr double cosine_of_12_degrees = 0.97815;

Direction towards(const Point& at, const Camera& camera) {
    return glm::normalize(at - Point(eye_position(camera)));
}

}  // namespace

std::optional<double> place_under(const AxisLine& line, const ViewRay& sight) {
    const Direction ray(sight.direction);
    const Direction between = line.origin - Point(sight.origin);
    const double cosine = glm::dot(line.direction, ray);
    const double sine2 = 1 - cosine * cosine;
    constexpr double parallel = 1e-10;
    if (sine2 < parallel) return std::nullopt;
    const double along_ray = glm::dot(ray, between);
    const double along_line = glm::dot(line.direction, between);
    const double depth = (along_ray - cosine * along_line) / sine2;
    if (depth <= 0) return std::copysign(std::numeric_limits<double>::infinity(), cosine);
    return (cosine * along_ray - along_line) / sine2;
}

bool points_at_viewer(const Direction& direction, const Point& at, const Camera& camera) {
    return std::abs(glm::dot(direction, towards(at, camera))) > cosine_of_12_degrees;
}

AxisDrag::AxisDrag(
    const AxisLine& line, double held, const Camera& camera, Viewport viewport, glm::vec2 pressed)
    : line_(line), camera_(camera), viewport_(viewport), pressed_(pressed) {
    const Point at = line.at(held);
    goes_by_height_ = points_at_viewer(line.direction, at, camera);
    const double depth =
        -glm::dot(at - Point(eye_position(camera)), Direction(camera_axes(camera).back));
    const double mm_per_px = mm_per_pixel(camera, viewport) * depth / camera.distance_mm;
    mm_per_px_up_ = std::copysign(mm_per_px, glm::dot(line.direction, towards(at, camera)));
    if (!goes_by_height_) start_ = place_at(pressed);
}

double AxisDrag::place_at(glm::vec2 pixel) const {
    return place_under(line_, ray_through(camera_, pixel, viewport_)).value_or(start_);
}

double AxisDrag::moved(glm::vec2 pixel) const {
    const double by =
        goes_by_height_ ? mm_per_px_up_ * (pressed_.y - pixel.y) : place_at(pixel) - start_;
    return std::clamp(by, -farthest_mm, farthest_mm);
}

}  // namespace beamfork
