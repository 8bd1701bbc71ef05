#include <algorithm>
#include <cmath>

#include "scene/picture/camera.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <glm/gtc/constants.hpp>

using namespace beamfork;

namespace {

constexpr Viewport viewport{1280, 720};
constexpr double rounding_mm = 2e-3;  // float, at some hundreds of mm
constexpr double rounding_px = 2e-2;

Camera oblique() {
    return {.target = {10, 20, 300}, .distance_mm = 700, .yaw_rad = 0.6F, .pitch_rad = 0.35F};
}

void check_near(glm::vec3 actual, glm::vec3 expected, double within) {
    CHECK(near(actual.x, expected.x, within));
    CHECK(near(actual.y, expected.y, within));
    CHECK(near(actual.z, expected.z, within));
}

glm::vec2 pixel_of(const Camera& camera, glm::vec3 world) {
    const auto pixel = project(camera, world, viewport);
    REQUIRE(pixel.has_value());
    return *pixel;
}

Frame some_train() {
    Frame frame;
    frame.bounds = {{-60, -60, -100}, {60, 210, 600}};
    frame.rear_bounds = {{-60, -30, 450}, {60, 210, 600}};
    frame.head_bounds = {{-60, -40, 380}, {60, 210, 600}};
    return frame;
}

}  // namespace

TEST_CASE("the target is seen in the middle of the picture") {
    const glm::vec2 pixel = pixel_of(oblique(), oblique().target);
    CHECK(near(pixel.x, 640, rounding_px));
    CHECK(near(pixel.y, 360, rounding_px));
}

TEST_CASE("in the side view light runs from left to right and up is up") {
    const Camera camera = standard_view(StandardView::side, some_train(), viewport.aspect());
    CHECK(pixel_of(camera, {0, 0, 500}).x > pixel_of(camera, {0, 0, 0}).x);
    CHECK(pixel_of(camera, {0, 100, 0}).y < pixel_of(camera, {0, 0, 0}).y);
}

TEST_CASE(
    "a length at the target's depth is seen under the angle that the field of view gives it") {
    Camera camera;
    camera.distance_mm = 1000;
    camera.field_of_view_rad = glm::radians(30.0F);
    // Half the picture's height is distance * tan(15 degrees) = 267.949 mm.
    CHECK(near(pixel_of(camera, {0, 267.949F, 0}).y, 0, rounding_px));
    CHECK(near(mm_per_pixel(camera, viewport), 2 * 267.949 / 720, 1e-5));
}

TEST_CASE("axes are right-handed unit vectors square to each other, straight down too") {
    for (const float pitch : {-glm::half_pi<float>(), -0.4F, 0.0F, 1.1F, glm::half_pi<float>()}) {
        Camera camera = oblique();
        camera.pitch_rad = pitch;
        const CameraAxes a = camera_axes(camera);
        check_near(glm::cross(a.right, a.up), a.back, 1e-6);
        CHECK(near(glm::dot(a.right, a.up), 0, 1e-6));
        CHECK(near(glm::length(a.back), 1, 1e-6));
    }
}

TEST_CASE("projection by matrices and by axes agree") {
    const Camera camera = oblique();
    const glm::mat4 clip_from_world =
        clip_from_view(camera, viewport.aspect()) * view_from_world(camera);
    for (const glm::vec3 world :
         {glm::vec3(0, 0, 0), glm::vec3(40, -30, 500), glm::vec3(-80, 90, 250)}) {
        const glm::vec4 clip = clip_from_world * glm::vec4(world, 1);
        const glm::vec2 pixel = pixel_of(camera, world);
        CHECK(near((1 + clip.x / clip.w) * 640, pixel.x, rounding_px));
        CHECK(near((1 - clip.y / clip.w) * 360, pixel.y, rounding_px));
        CHECK(std::abs(clip.z) < clip.w);
    }
}

TEST_CASE("what lies behind the eye is not seen") {
    const Camera camera = oblique();
    CHECK_FALSE(project(camera, eye_position(camera) + 10.0F * camera_axes(camera).back, viewport)
                    .has_value());
}

TEST_CASE("the half line through a pixel meets the point that is seen there") {
    const Camera camera = oblique();
    const glm::vec3 world{33, -12, 420};
    const ViewRay ray = ray_through(camera, pixel_of(camera, world), viewport);
    const glm::vec3 to_point = world - ray.origin;
    const glm::vec3 off_line = to_point - glm::dot(to_point, ray.direction) * ray.direction;
    CHECK(near(glm::length(off_line), 0, 0.02));
    CHECK(near(glm::length(ray.direction), 1, 1e-6));
}

TEST_CASE("a framed box fills the picture up to the margin and no corner lies outside") {
    const Bounds box{{-60, -60, -100}, {60, 210, 600}};
    for (const float yaw : {0.0F, 0.7F, 1.5F, 3.0F, -2.0F}) {
        for (const float aspect : {0.6F, 1.0F, 1.78F, 3.0F}) {
            const Viewport picture{720 * aspect, 720};
            Camera camera;
            camera.yaw_rad = yaw;
            camera.pitch_rad = 0.3F;
            camera = frame_bounds(camera, box, aspect, 0.1F);
            float tightest = 0;
            for (int corner = 0; corner < 8; ++corner) {
                const glm::vec3 share((corner & 1) != 0, (corner & 2) != 0, (corner & 4) != 0);
                const auto pixel = project(camera, glm::mix(box.low, box.high, share), picture);
                REQUIRE(pixel.has_value());
                const glm::vec2 unit =
                    glm::abs(*pixel / glm::vec2(picture.width, picture.height) * 2.0F - 1.0F);
                tightest = std::max({tightest, unit.x, unit.y});
            }
            CHECK(near(tightest, 0.9, 1e-3));
        }
    }
}

TEST_CASE("a drag pans what lies at the target's depth by just as many pixels") {
    const Camera before = oblique();
    const Camera after = pan(before, {35, -20}, viewport);
    const glm::vec2 moved = pixel_of(after, before.target) - pixel_of(before, before.target);
    CHECK(near(moved.x, 35, rounding_px));
    CHECK(near(moved.y, -20, rounding_px));
}

TEST_CASE("a pan and its opposite leave the camera where it was") {
    const Camera back = pan(pan(oblique(), {120, 44}, viewport), {-120, -44}, viewport);
    check_near(back.target, oblique().target, rounding_mm);
}

TEST_CASE("a zoom keeps the point under the cursor and halves its distance") {
    const Camera before = oblique();
    const glm::vec2 cursor{900, 150};
    const ViewRay ray = ray_through(before, cursor, viewport);
    const CameraAxes a = camera_axes(before);
    const float along = before.distance_mm / -glm::dot(ray.direction, a.back);
    const glm::vec3 under_cursor = ray.origin + along * ray.direction;
    const Camera after = zoom_towards(before, 2, cursor, viewport);
    CHECK(near(after.distance_mm, 350, 1e-3));
    CHECK(near(pixel_of(after, under_cursor).x, cursor.x, 0.05));
    CHECK(near(pixel_of(after, under_cursor).y, cursor.y, 0.05));
}

TEST_CASE("a drag to the right turns the near side to the right, a drag down shows the top") {
    const Camera before;
    const glm::vec3 near_side{-100, 0, 0};
    const Camera after = orbit(before, {50, 0}, viewport);
    CHECK(pixel_of(after, near_side).x > 640);
    CHECK(eye_position(orbit(before, {0, 50}, viewport)).y > 0);
}

TEST_CASE("a drag over the whole height is half a turn, and pitch stops at straight down") {
    const Camera after = orbit(Camera{}, {0, 5000}, viewport);
    CHECK(near(after.pitch_rad, glm::half_pi<float>(), 1e-6));
    CHECK(near(std::abs(orbit(Camera{}, {720, 0}, viewport).yaw_rad), glm::pi<float>(), 1e-5));
}

TEST_CASE("a blend begins and ends exactly at its ends") {
    const Camera a = oblique();
    const Camera b{.target = {0, 0, 100}, .distance_mm = 200, .yaw_rad = 2, .pitch_rad = -0.2F};
    CHECK(blend(a, b, 0) == a);
    CHECK(blend(a, b, 1) == b);
}

TEST_CASE("a blend turns the shorter way round and zooms at an even rate") {
    Camera a;
    Camera b;
    a.yaw_rad = glm::radians(170.0F);
    b.yaw_rad = glm::radians(-170.0F);
    a.distance_mm = 100;
    b.distance_mm = 400;
    const Camera half = blend(a, b, 0.5F);
    CHECK(near(std::abs(half.yaw_rad), glm::pi<float>(), 1e-5));
    CHECK(near(half.distance_mm, 200, 1e-3));  // the geometric mean
}

TEST_CASE("every standard view has a name that leads back to it") {
    for (const StandardView view : all_standard_views) {
        CHECK(standard_view_named(name_of(view)) == view);
        CHECK_FALSE(description_of(view).empty());
    }
    CHECK_FALSE(standard_view_named("sideways").has_value());
}

TEST_CASE(
    "from the eyepieces one looks against the leaving light, the observer's right at the right") {
    for (const glm::vec3 axis :
         {glm::vec3(0, 1, 0), glm::vec3(0, 0, 1), glm::vec3(0, 0.6F, 0.8F)}) {
        Frame frame = some_train();
        frame.eye_axis = axis;
        const CameraAxes a =
            camera_axes(standard_view(StandardView::eyes, frame, viewport.aspect()));
        check_near(a.back, axis, 1e-3);
        check_near(a.right, {1, 0, 0}, 1e-3);
    }
}
