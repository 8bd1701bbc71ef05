// The viewer's place: an orbit camera that circles a target, and the standard views of a train.
//
// Pure values: every move is a function from a camera to a new one. World millimetres, angles in
// radians, +y is up on screen at pitch 0. With yaw 0 the viewer stands at -x, so the light (+z) runs
// from left to right; positive yaw walks round to the eyepiece end (yaw 90 degrees looks against the
// light, as the observer does, with the observer's right at the right). Positive pitch rises.
// Pixels: x to the right, y DOWN, (0, 0) the upper left corner of the picture.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "document/standard_view.hpp"
#include "scene/picture/frame.hpp"

#include <glm/glm.hpp>

namespace beamfork {

/// Width and height of the picture the camera fills, in pixels.
struct Viewport {
    float width = 1280;
    float height = 720;
    [[nodiscard]] float aspect() const { return width / height; }
    bool operator==(const Viewport&) const = default;
};

struct Camera {
    glm::vec3 target{0};
    float distance_mm = 900;
    float yaw_rad = 0;
    float pitch_rad = 0;
    float field_of_view_rad = 0.5236F;  ///< vertical, full angle
    bool operator==(const Camera&) const = default;
};

/// Right, up and towards-the-viewer of the picture, as unit vectors in the world.
struct CameraAxes {
    glm::vec3 right{0, 0, 1};
    glm::vec3 up{0, 1, 0};
    glm::vec3 back{-1, 0, 0};
};

/// A half line from the eye into the scene, for picking; `direction` is a unit vector.
struct ViewRay {
    glm::vec3 origin{0};
    glm::vec3 direction{0, 0, 1};
};

CameraAxes camera_axes(const Camera& camera);
glm::vec3 eye_position(const Camera& camera);
glm::mat4 view_from_world(const Camera& camera);

/// Perspective with near and far planes that follow the distance to the target.
glm::mat4 clip_from_view(const Camera& camera, float aspect);

/// World length of one pixel at the depth of the target.
float mm_per_pixel(const Camera& camera, Viewport viewport);

/// Turns about the target by a drag in pixels; one picture height is half a turn. Pitch stops at
/// straight up and straight down.
Camera orbit(Camera camera, glm::vec2 drag_px, Viewport viewport);

/// Shifts target and eye in the picture plane, so that what lies at the target's depth follows the drag.
Camera pan(Camera camera, glm::vec2 drag_px, Viewport viewport);

/// Comes nearer by `factor` (> 1) or goes away (< 1); what lies under the cursor at the target's depth
/// stays under the cursor.
Camera zoom_towards(Camera camera, float factor, glm::vec2 cursor_px, Viewport viewport);

/// Keeps the direction of view; moves so that the whole box fills the picture up to `margin` (share
/// of the half picture left free at the tightest side, 0.08 is comfortable).
Camera frame_bounds(Camera camera, const Bounds& bounds, float aspect, float margin = 0.08F);

/// From `a` (t = 0) to `b` (t = 1), turning the shorter way round and zooming at an even rate.
Camera blend(const Camera& a, const Camera& b, float t);

/// Where a world point is seen; empty when it lies behind the eye.
std::optional<glm::vec2> project(const Camera& camera, glm::vec3 world, Viewport viewport);

/// The half line seen through a pixel.
ViewRay ray_through(const Camera& camera, glm::vec2 pixel, Viewport viewport);

/// One sentence on what the view shows, for help and tooltips.
std::string_view description_of(StandardView view);

/// A camera that shows the frame: the whole train from `side`, `top` and `sky`, else what is between the focuser and the
/// eyes, large.
Camera standard_view(StandardView view, const Frame& frame, float aspect);

}  // namespace beamfork
