#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/prism_diagonal.hpp"
#include "parts/target.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Train built(const Setup& setup, double drawtube = 0) {
    auto train = build_train(setup, setup.chosen, Millimetres{drawtube});
    REQUIRE(train.has_value());
    return *std::move(train);
}

}  // namespace

TEST_CASE("points of the sunflower spiral lie in the disc and spread evenly over it") {
    for (const int count : {64, 256, 1024}) {
        CAPTURE(count);
        const auto points = sunflower(count);
        REQUIRE(static_cast<int>(points.size()) == count);
        glm::dvec2 mean{0};
        double square = 0;
        int inner = 0;
        for (const glm::dvec2& point : points) {
            CHECK(glm::length(point) < 1);
            mean += point / static_cast<double>(count);
            square += glm::dot(point, point) / count;
            inner += glm::length(point) < std::sqrt(0.5) ? 1 : 0;
        }
        CHECK(glm::length(mean)
              < 2.0 / count);  // even spread: sampling, of the order of one point in `count`
        CHECK(near(square, 0.5, 1e-12));  // mean square radius of a disc; the radii make it exact
        CHECK(near(inner, count / 2.0, 1));  // half of the area holds half of the points
        // Share of the points on one side of any chord through the middle.
        for (double turn = 0; turn < 3; turn += 0.37) {
            const glm::dvec2 side{std::cos(turn), std::sin(turn)};
            const auto above =
                std::ranges::count_if(points, [&](glm::dvec2 p) { return glm::dot(p, side) > 0; });
            CHECK(near(static_cast<double>(above) / count, 0.5, 1 / std::sqrt(count) / 4));
        }
    }
}

TEST_CASE("the same points come every time, and a count of none breaks the contract") {
    CHECK(sunflower(100) == sunflower(100));
    CHECK_THROWS_AS(sunflower(0), BrokenContract);
    CHECK_THROWS_AS(rim(-1), BrokenContract);
}

TEST_CASE("points of the rim lie on the unit circle at equal steps") {
    const auto points = rim(12);
    REQUIRE(points.size() == 12);
    for (std::size_t i = 0; i < points.size(); ++i) {
        CHECK(near(glm::length(points[i]), 1, 1e-15));
        // A chord of 30 degrees: 2 sin(15 degrees).
        CHECK(near(glm::distance(points[i], points[(i + 1) % 12]),
                   2 * std::sin(std::numbers::pi / 12), 1e-14));
    }
}

TEST_CASE("a star's rays start on one plane wavefront and meet the objective where they are sent") {
    const Train train = built(plain_setup());
    const FieldSlope field{0.01, -0.02};
    const Ray chief = ray_into(train, field, {0, 0}, 25);
    CHECK(near(glm::length(chief.origin), 25, 1e-12));
    for (const glm::dvec2& pupil : sunflower(50)) {
        const Ray ray = ray_into(train, field, pupil, 25);
        CHECK(ray.path == 0);
        CHECK(glm::distance(ray.direction, chief.direction) < 1e-15);
        CHECK(near(glm::dot(ray.origin - chief.origin, chief.direction), 0, 1e-12));
        const Point met = ray.origin - ray.direction * (ray.origin.z / ray.direction.z);
        CHECK(glm::distance(met, Point{pupil * train.objective_radius, 0}) < 1e-12);
        CHECK(near(ray.direction.x / ray.direction.z, field.x, 1e-15));
        CHECK(near(ray.direction.y / ray.direction.z, field.y, 1e-15));
    }
}

TEST_CASE("a near target's rays come from one point and keep the path from there") {
    Setup setup = plain_setup();
    the<Target>(setup).distance = Metres{15};
    const Train train = built(setup);
    const FieldSlope field{0.01, -0.02};
    const Point object{-15000.0 * field, -15000};
    for (const glm::dvec2& pupil : sunflower(50)) {
        const Ray ray = ray_into(train, field, pupil, 30);
        const Point met{pupil * train.objective_radius, 0};
        CHECK(near(ray.path, glm::distance(object, ray.origin), 1e-9));
        CHECK(glm::distance(object + ray.path * ray.direction, ray.origin) < 1e-8);
        CHECK(near(glm::distance(ray.origin, met), 30, 1e-9));
    }
    const Ray chief = ray_into(train, field, {0, 0}, 30);
    CHECK(near(chief.direction.y / chief.direction.z, field.y, 1e-15));
}

TEST_CASE("the field map scales slopes by the effective focal length and sends each point back to "
          "its slope") {
    const double lens = 5;
    for (const Setup& setup : {wide_setup(), wide_setup({bare_lens(-150, lens)})}) {
        const Train train = built(setup, 0);
        for (const Eye eye : both_eyes) {
            const FieldMap map = field_map(train, eye);
            // Chief rays go through the objective's middle and the lens's power: y = L + d - L d / f behind it.
            double to_lens = 400;  // objective to the drawtube's rear face
            double behind =
                0;  // air-equivalent from there to the field stop, or lens to field stop
            double power = 0;
            for (const AxialStep& step : train.path(eye).steps) {
                behind += step.reduced();
                if (step.lens_focal_length == 0) continue;
                power = 1 / step.lens_focal_length;
                to_lens += behind;
                behind = 0;
            }
            const double scale = to_lens + behind - to_lens * behind * power;
            CHECK(near(std::sqrt(std::abs(glm::determinant(map.stop_from_slope))), std::abs(scale),
                       1e-4));
            const glm::dvec2 at{6, -4};
            CHECK(glm::distance(map.stop_from_slope * map.slope_at(at), at) < 1e-9);
            const EyePath open = without_stops(train.path(eye));
            const Ray end = trace_ray(open, ray_into(train, map.slope_at(at), {0, 0}, 10), 1).ray;
            // The map is linear: distortion of tilted-in chief rays through glass leaves some micrometres.
            CHECK(glm::distance(glm::dvec2(open.world_from_field_stop.point_in(end.origin)), at)
                  < 0.02);
        }
    }
}

TEST_CASE("without its openings a path lets every ray arrive, where it would have arrived anyway") {
    const Train train = built(plain_setup({{"Diagonal", PrismDiagonal{}, {}}}));
    const EyePath& path = train.path(Eye::right);
    const EyePath open = without_stops(path);
    int whole = 0;
    for (const glm::dvec2& pupil : sunflower(200)) {
        const Ray start = ray_into(train, {0.03, 0.01}, pupil, 10);
        const RayEnd free_end = trace_ray(open, start, 1);
        const RayEnd end = trace_ray(path, start, 1);
        CHECK(free_end.fate == RayFate::reached);
        if (end.fate != RayFate::reached) continue;
        ++whole;
        CHECK(end.ray.origin == free_end.ray.origin);
        CHECK(end.ray.path == free_end.ray.path);
    }
    CHECK(whole < 200);  // some are clipped on the way
}
