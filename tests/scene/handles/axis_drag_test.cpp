#include <cmath>
#include <random>

#include "scene/handles/axis_drag.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr Viewport drag_viewport{1000, 600};
constexpr double drag_rounding_mm = 2e-2;  // single precision of pixels at these distances

// Looks from -x, the light running from left to right, at the world's origin.
Camera drag_camera() {
    Camera camera;
    camera.distance_mm = 1000;
    return camera;
}

}  // namespace

TEST_CASE("the nearest place on a line to a half line: worked by hand") {
    // The line is the z axis; sight starts at (-10, 3, 0) and goes along (1, 0, 1)/sqrt 2. Its place over the axis is
    // (0, 3, 10), 3 mm above it: t = 10.
    const AxisLine axis{{0, 0, 0}, {0, 0, 1}};
    const float half = std::sqrt(0.5F);
    const auto place = place_under(axis, {{-10, 3, 0}, {half, 0, half}});
    REQUIRE(place.has_value());
    CHECK(near(*place, 10, 1e-5));  // single precision of the ray
    // Parallel: no place is nearest.
    CHECK_FALSE(place_under(axis, {{-10, 3, 0}, {0, 0, 1}}).has_value());
    // Sight runs away from the axis: it is past the vanishing point, at the end that lies ahead.
    const auto beyond = place_under(axis, {{-10, 3, 0}, {-half, 0, half}});
    REQUIRE(beyond.has_value());
    CHECK(std::isinf(*beyond));
    CHECK(*beyond > 0);
    const auto other_end = place_under(axis, {{-10, 3, 0}, {-half, 0, -half}});
    REQUIRE(other_end.has_value());
    CHECK(*other_end < 0);
}

TEST_CASE("across the line of sight, a pixel is worth what the camera says at the target's depth") {
    // Square to the line of sight perspective is a plain scale: 2 d tan(fov / 2) / height mm for one pixel.
    const Camera camera = drag_camera();
    const double mm_per_px = 2 * 1000 * std::tan(0.5236 / 2) / 600;
    const AxisDrag drag({{0, 0, 0}, {0, 0, 1}}, 0, camera, drag_viewport, {500, 300});
    CHECK_FALSE(drag.goes_by_height());
    CHECK(near(drag.moved({500, 300}), 0, 1e-9));
    CHECK(near(drag.moved({600, 300}), 100 * mm_per_px, drag_rounding_mm));
    CHECK(near(drag.moved({350, 300}), -150 * mm_per_px, drag_rounding_mm));
    // From (-1000, 0, 0) along (1, h, m) sight comes nearest to the z axis where (s - 1000)^2 + s^2 h^2 is least, at
    // s = 1000 / (1 + h^2), over z = s m.
    const double h = 40 * mm_per_px / 1000;
    CHECK(near(drag.moved({600, 340}), 100 * mm_per_px / (1 + h * h), drag_rounding_mm));
}

TEST_CASE("what was taken hold of stays under the pointer, from wherever one looks") {
    // The inverse pair: a place that is t along the line is seen at a pixel, and that pixel means t.
    std::mt19937 random(41);
    std::uniform_real_distribution<double> unit(-1, 1);
    int counted = 0;
    for (int i = 0; i < 400; ++i) {
        Camera camera;
        camera.target = {60 * unit(random), 60 * unit(random), 60 * unit(random)};
        camera.distance_mm = static_cast<float>(600 + 300 * unit(random));
        camera.yaw_rad = static_cast<float>(3 * unit(random));
        camera.pitch_rad = static_cast<float>(1.5 * unit(random));
        const Point origin{40 * unit(random), 40 * unit(random), 40 * unit(random)};
        const Direction direction =
            glm::normalize(Direction{unit(random), unit(random), unit(random) + 1e-3});
        if (points_at_viewer(direction, origin, camera)) continue;
        const AxisLine line{origin, direction};
        const double held = 30 * unit(random);
        const double moved = 80 * unit(random);
        if (points_at_viewer(direction, line.at(held), camera)) continue;
        const auto pressed = project(camera, glm::vec3(line.at(held)), drag_viewport);
        const auto later = project(camera, glm::vec3(line.at(held + moved)), drag_viewport);
        REQUIRE(pressed.has_value());
        REQUIRE(later.has_value());
        const AxisDrag drag(line, held, camera, drag_viewport, *pressed);
        // At 12 degrees of foreshortening single precision counts five times.
        CHECK(near(drag.moved(*later), moved, 5 * drag_rounding_mm));
        ++counted;
    }
    CHECK(counted > 300);
}

TEST_CASE("a line that points at the viewer is moved by height: up is away, and nothing jumps") {
    const Camera camera = drag_camera();  // looks along +x
    const AxisDrag away({{0, 0, 0}, {1, 0, 0}}, 0, camera, drag_viewport, {500, 300});
    CHECK(away.goes_by_height());
    const double mm_per_px = 2 * 1000 * std::tan(0.5236 / 2) / 600;
    CHECK(near(away.moved({500, 280}), 20 * mm_per_px, drag_rounding_mm));
    CHECK(near(away.moved({900, 300}), 0, 1e-9));
    const AxisDrag nearer({{0, 0, 0}, {-1, 0, 0}}, 0, camera, drag_viewport, {500, 300});
    CHECK(near(nearer.moved({500, 280}), -20 * mm_per_px, drag_rounding_mm));
}

TEST_CASE("past the vanishing point a drag stands at the far end instead of jumping to the other") {
    // 30 degrees off the line of sight: the line vanishes at tan 30 / tan 15 half heights, outside of the picture
    // but within reach of a mouse.
    const double angle = 30 * std::acos(-1.0) / 180;
    const AxisLine line{{0, 0, 0}, {std::cos(angle), 0, std::sin(angle)}};
    const AxisDrag drag(line, 0, drag_camera(), drag_viewport, {500, 300});
    const double vanishing_px = 500 + 300 * std::tan(angle) / std::tan(0.5236 / 2);
    double before = 0;
    for (double x = 510; x < vanishing_px - 1; x += 10) {
        const double now = drag.moved({static_cast<float>(x), 300});
        CHECK(now >= before);
        before = now;
    }
    CHECK(drag.moved({static_cast<float>(vanishing_px + 40), 300}) == AxisDrag::farthest_mm);
}
