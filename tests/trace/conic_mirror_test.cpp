// Curved mirrors against the closed forms of a paraboloid and of a classical two-mirror telescope.
#include <cmath>

#include "support/eye_paths.hpp"
#include "support/near.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double focal_length = 1000;

// A paraboloid with its vertex at the origin, seen in its focal plane.
EyePath paraboloid() {
    PlacedSurface mirror = placed("mirror", SurfaceKind::mirror, Pose{});
    mirror.shape = {-1 / (2 * focal_length), -1};
    EyePath path;
    path.object_distance = std::numeric_limits<double>::infinity();
    path.world_from_field_stop =
        translation(0, 0, -focal_length) * rotation_about_y(to_radians(Degrees{180}));
    path.surfaces = {mirror, placed("plane", SurfaceKind::stop, path.world_from_field_stop)};
    return path;
}

// The height at which a ray from the field angle crosses the focal plane, by its place on the mirror's rim plane.
double height(const EyePath& path, double angle, glm::dvec2 at) {
    const double rim = -100.0 * 100 / (4 * focal_length);  // of a 200 mm mirror
    const Direction along{0, std::sin(angle), std::cos(angle)};
    const double back = 200;
    const Ray start{Point{at, rim} - back * along, along, 0};
    return trace_ray(path, start, primary_wavelength).ray.origin.y;
}

}  // namespace

TEST_CASE("all rays of a star on the axis of a paraboloid meet in its focus by one optical path") {
    const EyePath path = paraboloid();
    for (const glm::dvec2& point : sunflower(100)) {
        const Ray start{{150.0 * point, -1500}, {0, 0, 1}, 0};
        const RayEnd end = trace_ray(path, start, primary_wavelength);
        CHECK(end.fate == RayFate::reached);
        CHECK(glm::distance(end.ray.origin, Point{0, 0, -focal_length}) < 1e-10);  // rounding
        // Definition of a parabola: to the mirror and on to the focus is as long for all, here 1500 + f.
        CHECK(near(end.ray.path, 1500 + focal_length, 1e-10));
    }
}

TEST_CASE("the coma of a paraboloid is 3 / (16 N^2) of the field angle, a third of that sideways") {
    const EyePath path = paraboloid();
    const double radius = 100;
    const double N = focal_length / (2 * radius);
    for (const double degrees : {0.1, 0.25, 0.5}) {
        const double angle = degrees * std::acos(-1.0) / 180;
        const double chief = height(path, angle, {0, 0});
        const double tangential =
            (height(path, angle, {0, radius}) + height(path, angle, {0, -radius})) / 2 - chief;
        const double sagittal =
            (height(path, angle, {radius, 0}) + height(path, angle, {-radius, 0})) / 2 - chief;
        // W. J. Smith, Modern Optical Engineering, 4th ed., reflecting systems: tangential coma of a paraboloid with
        // the stop at the mirror. Third order: the next order is about (1 / 4N)^2 of it, here 0.25 %, times a few.
        const double expected = 3 * angle * focal_length / (16 * N * N);
        CHECK(near(std::abs(tangential), expected, 0.01 * expected));
        CHECK(near(std::abs(sagittal), expected / 3, 0.01 * expected));
    }
}

TEST_CASE(
    "a paraboloid and the hyperboloid that shares its focus image a star by one optical path") {
    // A classical pair: f1 = 400, magnification 5, the secondary 80 in front of the first focus. Its conic constant is
    // -((m + 1) / (m - 1))^2 = -2.25 and its focal length p m / (m - 1) = 100 (two-mirror formulas, W. J. Smith,
    // Modern Optical Engineering, 4th ed.).
    PlacedSurface primary = placed("primary", SurfaceKind::mirror, Pose{});
    primary.shape = {-1.0 / 800, -1};
    PlacedSurface secondary =
        placed("secondary", SurfaceKind::mirror,
               translation(0, 0, -320) * rotation_about_y(to_radians(Degrees{180})));
    secondary.shape = {1.0 / 200, -2.25};
    EyePath path;
    path.object_distance = std::numeric_limits<double>::infinity();
    path.world_from_field_stop = translation(0, 0, 80);
    path.surfaces = {primary, secondary,
                     placed("plane", SurfaceKind::stop, path.world_from_field_stop)};
    const double whole = 1000 + 320 + 400;  // along the axis
    for (const glm::dvec2& point : sunflower(60)) {
        const RayEnd end =
            trace_ray(path, {{100.0 * point, -1000}, {0, 0, 1}, 0}, primary_wavelength);
        CHECK(glm::distance(end.ray.origin, Point{0, 0, 80}) < 1e-9);  // rounding, times 5
        CHECK(near(end.ray.path, whole, 1e-9));
    }
}

TEST_CASE("a ray turned about behind a curved mirror goes home") {
    const EyePath there = paraboloid();
    EyePath back;
    PlacedSurface mirror = there.surfaces.front();
    mirror.world_from_surface =
        mirror.world_from_surface * rotation_about_x(to_radians(Degrees{180}));
    mirror.shape.curvature = -mirror.shape.curvature;
    const Pose start_plane = translation(0, 0, -300) * rotation_about_x(to_radians(Degrees{180}));
    back.surfaces = {mirror, placed("plane", SurfaceKind::stop, start_plane)};
    Random random(5);
    for (int i = 0; i < 50; ++i) {
        const Ray start{{random.between(-90, 90), random.between(-90, 90), -300},
                        random_direction_near_z(random, 0.02)};
        const RayEnd end = trace_ray(there, start, primary_wavelength);
        const RayEnd home =
            trace_ray(back, {end.ray.origin, -end.ray.direction, 0}, primary_wavelength);
        CHECK(glm::distance(home.ray.origin, start.origin) < 1e-9);  // rounding over 2 m
        CHECK(glm::distance(home.ray.direction, -start.direction) < 1e-12);
    }
}

TEST_CASE("what stands in the light stops what meets it and nothing else") {
    PlacedSurface disc = placed("shadow", SurfaceKind::obstruction, Pose{}, Circle{10});
    EyePath path;
    path.surfaces = {disc, placed("plane", SurfaceKind::stop, translation(0, 0, 5))};
    CHECK(trace_ray(path, {{9.99, 0, -5}}, primary_wavelength).fate == RayFate::clipped);
    CHECK(trace_ray(path, {{10.01, 0, -5}}, primary_wavelength).fate == RayFate::reached);
    CHECK(trace_ray(without_stops(path), {{0, 0, -5}}, primary_wavelength).fate
          == RayFate::reached);
}
