#include "scene/picture/camera.hpp"

#include <algorithm>
#include <cmath>

#include <glm/gtc/constants.hpp>
#include <glm/gtc/matrix_transform.hpp>

namespace beamfork {

namespace {

constexpr float nearest_mm = 4;
constexpr float farthest_mm = 30'000;
constexpr float near_share = 0.04F;  // of the distance: a 24-bit depth then resolves about 1 um

float half_height_slope(const Camera& camera) { return std::tan(0.5F * camera.field_of_view_rad); }

/// Position in the picture: (-1, -1) lower left, (1, 1) upper right.
glm::vec2 unit_position(glm::vec2 pixel, Viewport viewport) {
    return {2 * pixel.x / viewport.width - 1, 1 - 2 * pixel.y / viewport.height};
}

/// The nearest the eye may be, and the shift that centres, for one picture axis: with corners at
/// (p, back) the conditions |p - shift| <= (distance - back) slope are linear in both unknowns.
struct AxisFit {
    float upper = -1e30F;  // max of  p + back * slope
    float lower = -1e30F;  // max of -p + back * slope
    void include(float p, float back, float slope) {
        upper = std::max(upper, p + back * slope);
        lower = std::max(lower, -p + back * slope);
    }
    [[nodiscard]] float shift() const { return 0.5F * (upper - lower); }
    [[nodiscard]] float distance(float slope) const { return 0.5F * (upper + lower) / slope; }
};

/// Yaw and pitch from which one looks straight against the direction `axis`.
Camera looking_against(glm::vec3 axis) {
    Camera camera;
    const glm::vec3 back = glm::normalize(axis);
    camera.pitch_rad = std::asin(std::clamp(back.y, -1.0F, 1.0F));
    const bool upright = std::abs(back.y) > 0.999F;  // yaw is free: stand where the observer stands
    camera.yaw_rad = upright ? glm::half_pi<float>() : std::atan2(back.z, -back.x);
    return camera;
}

// Seen from the side or from above, names stand behind the train's end.
Bounds with_room_for_names(Bounds shown) {
    constexpr float share = 0.2F;
    shown.high.z += share * (shown.high.z - shown.low.z);
    return shown;
}

}  // namespace

CameraAxes camera_axes(const Camera& camera) {
    const float cy = std::cos(camera.yaw_rad);
    const float sy = std::sin(camera.yaw_rad);
    const float cp = std::cos(camera.pitch_rad);
    const float sp = std::sin(camera.pitch_rad);
    return {.right = {sy, 0, cy}, .up = {sp * cy, cp, -sp * sy}, .back = {-cp * cy, sp, cp * sy}};
}

glm::vec3 eye_position(const Camera& camera) {
    return camera.target + camera.distance_mm * camera_axes(camera).back;
}

glm::mat4 view_from_world(const Camera& camera) {
    const CameraAxes a = camera_axes(camera);
    const glm::mat3 rotation = glm::transpose(glm::mat3(a.right, a.up, a.back));
    glm::mat4 view(rotation);
    view[3] = glm::vec4(-(rotation * eye_position(camera)), 1);
    return view;
}

glm::mat4 clip_from_view(const Camera& camera, float aspect) {
    const float near_plane = near_share * camera.distance_mm;
    const float far_plane = camera.distance_mm + std::max(4'000.0F, 8 * camera.distance_mm);
    return glm::perspective(camera.field_of_view_rad, aspect, near_plane, far_plane);
}

float mm_per_pixel(const Camera& camera, Viewport viewport) {
    return 2 * camera.distance_mm * half_height_slope(camera) / viewport.height;
}

Camera orbit(Camera camera, glm::vec2 drag_px, Viewport viewport) {
    const float per_pixel = glm::pi<float>() / viewport.height;
    camera.yaw_rad = std::remainder(camera.yaw_rad - drag_px.x * per_pixel, glm::two_pi<float>());
    camera.pitch_rad = std::clamp(camera.pitch_rad + drag_px.y * per_pixel, -glm::half_pi<float>(),
                                  glm::half_pi<float>());
    return camera;
}

Camera pan(Camera camera, glm::vec2 drag_px, Viewport viewport) {
    const CameraAxes a = camera_axes(camera);
    camera.target += mm_per_pixel(camera, viewport) * (drag_px.y * a.up - drag_px.x * a.right);
    return camera;
}

Camera zoom_towards(Camera camera, float factor, glm::vec2 cursor_px, Viewport viewport) {
    const float distance = std::clamp(camera.distance_mm / factor, nearest_mm, farthest_mm);
    const float kept = distance / camera.distance_mm;
    const CameraAxes a = camera_axes(camera);
    const glm::vec2 at = unit_position(cursor_px, viewport);
    const float half_height = camera.distance_mm * half_height_slope(camera);
    const glm::vec3 to_cursor = half_height * (at.x * viewport.aspect() * a.right + at.y * a.up);
    camera.target += (1 - kept) * to_cursor;
    camera.distance_mm = distance;
    return camera;
}

Camera frame_bounds(Camera camera, const Bounds& bounds, float aspect, float margin) {
    const CameraAxes a = camera_axes(camera);
    const float slope_y = half_height_slope(camera) * (1 - margin);
    const float slope_x = slope_y * aspect;
    AxisFit across;
    AxisFit along;
    for (int corner = 0; corner < 8; ++corner) {
        const glm::vec3 share((corner & 1) != 0, (corner & 2) != 0, (corner & 4) != 0);
        const glm::vec3 from_centre = glm::mix(bounds.low, bounds.high, share) - bounds.centre();
        const float back = glm::dot(from_centre, a.back);
        across.include(glm::dot(from_centre, a.right), back, slope_x);
        along.include(glm::dot(from_centre, a.up), back, slope_y);
    }
    camera.target = bounds.centre() + across.shift() * a.right + along.shift() * a.up;
    camera.distance_mm = std::clamp(std::max(across.distance(slope_x), along.distance(slope_y)),
                                    nearest_mm, farthest_mm);
    return camera;
}

Camera blend(const Camera& a, const Camera& b, float t) {
    if (t <= 0) return a;
    if (t >= 1) return b;
    Camera between;
    between.target = glm::mix(a.target, b.target, t);
    between.distance_mm = a.distance_mm * std::pow(b.distance_mm / a.distance_mm, t);
    const float turn = std::remainder(b.yaw_rad - a.yaw_rad, glm::two_pi<float>());
    between.yaw_rad = std::remainder(a.yaw_rad + t * turn, glm::two_pi<float>());
    between.pitch_rad = glm::mix(a.pitch_rad, b.pitch_rad, t);
    between.field_of_view_rad = glm::mix(a.field_of_view_rad, b.field_of_view_rad, t);
    return between;
}

std::optional<glm::vec2> project(const Camera& camera, glm::vec3 world, Viewport viewport) {
    const CameraAxes a = camera_axes(camera);
    const glm::vec3 from_eye = world - eye_position(camera);
    const float depth = -glm::dot(from_eye, a.back);
    if (depth <= near_share * camera.distance_mm) return std::nullopt;
    const float pixels = 0.5F * viewport.height / (depth * half_height_slope(camera));
    return glm::vec2(0.5F * viewport.width + pixels * glm::dot(from_eye, a.right),
                     0.5F * viewport.height - pixels * glm::dot(from_eye, a.up));
}

ViewRay ray_through(const Camera& camera, glm::vec2 pixel, Viewport viewport) {
    const CameraAxes a = camera_axes(camera);
    const glm::vec2 at = half_height_slope(camera) * unit_position(pixel, viewport);
    return {.origin = eye_position(camera),
            .direction = glm::normalize(at.x * viewport.aspect() * a.right + at.y * a.up - a.back)};
}

std::string_view description_of(StandardView view) {
    switch (view) {
    case StandardView::overview: return "from the focuser to the eyes, a little from behind";
    case StandardView::side: return "from the side, light running from left to right";
    case StandardView::top: return "from above, light running from left to right";
    case StandardView::sky: return "from the sky into the objective";
    case StandardView::eyes: return "from the observer's head down into the eyepieces";
    case StandardView::rear: return "close up: everything behind the drawtube";
    }
    return "";
}

Camera standard_view(StandardView view, const Frame& frame, float aspect) {
    constexpr float quarter = glm::half_pi<float>();
    Camera camera;
    Bounds shown = frame.bounds;
    switch (view) {
    case StandardView::overview:
        camera.yaw_rad = glm::radians(46.0F);
        camera.pitch_rad = glm::radians(15.0F);
        // Both arms side by side; where light leaves a tube sideways, from the sky's side into the tube.
        if (frame.head_bounds.high.z < frame.bounds.high.z - 1)
            camera.yaw_rad = glm::radians(232.0F);
        shown = frame.head_bounds;
        break;
    case StandardView::side: shown = with_room_for_names(shown); break;
    case StandardView::top:
        camera.pitch_rad = quarter;
        shown = with_room_for_names(shown);
        break;
    case StandardView::sky:
        camera.yaw_rad = glm::radians(-78.0F);
        camera.pitch_rad = glm::radians(10.0F);
        break;
    case StandardView::eyes:
        camera = looking_against(frame.eye_axis);
        shown = frame.head_bounds;
        break;
    case StandardView::rear:
        camera.yaw_rad = glm::radians(52.0F);
        camera.pitch_rad = glm::radians(14.0F);
        shown = frame.head_bounds;
        break;
    }
    return frame_bounds(camera, shown, aspect);
}

}  // namespace beamfork
