#include "scene/picture/train_inset.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

namespace {

// Andrew's monotone chain (A. M. Andrew, Information Processing Letters 9(5), 216-219, 1979).
std::vector<glm::vec2> convex_hull(std::vector<glm::vec2> points) {
    std::sort(points.begin(), points.end(),
              [](glm::vec2 a, glm::vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
    std::vector<glm::vec2> hull;
    for (int pass = 0; pass < 2; ++pass) {
        const std::size_t first = hull.size();
        for (const glm::vec2 at : points) {
            const auto turns_right = [&] {
                const glm::vec2 a = hull[hull.size() - 2];
                const glm::vec2 b = hull.back();
                return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x) <= 0;
            };
            while (hull.size() >= first + 2 && turns_right())
                hull.pop_back();
            hull.push_back(at);
        }
        hull.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return hull;
}

// From the world to the inset: seen from the camera's side, from far away.
struct InsetView {
    CameraAxes axes;
    glm::vec3 centre{0};
    glm::vec2 middle{0};
    float px_per_mm = 1;

    [[nodiscard]] glm::vec2 at(glm::vec3 world) const {
        const glm::vec3 off = world - centre;
        return middle + px_per_mm * glm::vec2(glm::dot(off, axes.right), -glm::dot(off, axes.up));
    }
};

glm::vec3 corner_of(const Bounds& bounds, int corner) {
    const glm::vec3 share((corner & 1) != 0, (corner & 2) != 0, (corner & 4) != 0);
    return glm::mix(bounds.low, bounds.high, share);
}

InsetView view_into(const PixelBox& box, const Bounds& bounds, const Camera& camera) {
    InsetView view{camera_axes(camera), bounds.centre(), 0.5F * (box.low + box.high), 1};
    glm::vec2 reach{1};
    for (int corner = 0; corner < 8; ++corner)
        reach = glm::max(reach, glm::abs(view.at(corner_of(bounds, corner)) - view.middle));
    const glm::vec2 room = 0.5F * 0.86F * (box.high - box.low);
    view.px_per_mm = std::min(room.x / reach.x, room.y / reach.y);
    return view;
}

// Corners of the train's bounds that lie in the picture, with a little to spare.
int corners_seen(const Bounds& bounds, const Camera& camera, Viewport viewport) {
    constexpr float beyond = 0.02F;
    int seen = 0;
    for (int corner = 0; corner < 8; ++corner) {
        const auto at = project(camera, corner_of(bounds, corner), viewport);
        if (!at) continue;
        const glm::vec2 unit = *at / glm::vec2(viewport.width, viewport.height);
        const bool is_in =
            unit.x > -beyond && unit.y > -beyond && unit.x < 1 + beyond && unit.y < 1 + beyond;
        seen += is_in ? 1 : 0;
    }
    return seen;
}

std::vector<glm::vec2> outline_of(const Mesh& mesh, const InsetView& view) {
    constexpr std::size_t most = 48;  // corners: a circle stays round at this size
    std::vector<glm::vec2> points;
    const std::size_t step = std::max<std::size_t>(1, mesh.vertices.size() / most);
    for (std::size_t i = 0; i < mesh.vertices.size(); i += step)
        points.push_back(view.at(mesh.vertices[i].position));
    return convex_hull(std::move(points));
}

}  // namespace

PixelBox inset_box(Viewport viewport, float foot_px) {
    const float width = std::min(0.2F * viewport.width, 0.3F * viewport.height);
    const float margin = 0.02F * viewport.height;
    const glm::vec2 low{margin, viewport.height - foot_px - margin - 0.62F * width};
    return {low, low + glm::vec2(width, 0.62F * width)};
}

std::optional<TrainInset>
train_inset(const Frame& frame, const Camera& camera, Viewport viewport, float foot_px) {
    constexpr float least_width_px = 90;
    TrainInset inset{inset_box(viewport, foot_px), {}, {}};
    if (inset.box.high.x - inset.box.low.x < least_width_px) return std::nullopt;
    if (corners_seen(frame.bounds, camera, viewport) == 8) return std::nullopt;
    const InsetView view = view_into(inset.box, frame.bounds, camera);
    for (const Mesh& mesh : frame.meshes) {
        if (mesh.part < 0 || mesh.vertices.size() < 3) continue;
        auto outline = outline_of(mesh, view);
        if (outline.size() >= 3) inset.bodies.push_back({std::move(outline), mesh.part});
    }
    const float half_height = camera.distance_mm * std::tan(0.5F * camera.field_of_view_rad);
    const glm::vec2 half = view.px_per_mm * half_height * glm::vec2(viewport.aspect(), 1);
    const glm::vec2 target = view.at(camera.target);
    inset.seen = {glm::max(target - half, inset.box.low), glm::min(target + half, inset.box.high)};
    const glm::vec2 size = inset.seen.high - inset.seen.low;
    if (size.x <= 0 || size.y <= 0) return std::nullopt;
    return inset;
}

}  // namespace beamfork
