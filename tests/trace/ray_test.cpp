#include <cmath>
#include <numbers>

#include "parts/mirror_diagonal.hpp"
#include "parts/prism_diagonal.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

#include <Eigen/Geometry>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double fine_rounding = 1e-11;

Radians degrees(double angle) { return to_radians(Degrees{angle}); }

Direction at_angle(double angle) {
    return {0, std::sin(degrees(angle).value), std::cos(degrees(angle).value)};
}

using Line = Eigen::ParametrizedLine<double, 3>;
using Plane = Eigen::Hyperplane<double, 3>;

Eigen::Vector3d to_eigen(const glm::dvec3& v) { return {v.x, v.y, v.z}; }

// A tangle of mirrors and glass faces, each leaning at random, that a ray along z meets one after the other.
EyePath random_tangle(Random& random) {
    PathMaker maker;
    Pose frame;
    for (int i = 0; i < 8; ++i) {
        frame = frame * translation(0, 0, random.between(5, 40));
        const Pose leaning = frame * rotation_about_x(degrees(random.between(-20, 20)))
                             * rotation_about_y(degrees(random.between(-20, 20)))
                             * rotation_about_z(degrees(random.between(-180, 180)));
        if (random.chance(0.3)) {
            maker.mirror(leaning);
            const Direction z = mirrored(frame.z(), leaning.z());
            frame = pose_facing(leaning.origin, z, {0.3, 0.9, 0.1});
        } else {
            maker.face(leaning, random.between(1, 1.8));
        }
    }
    return maker.ending_at(frame * translation(0, 0, 30));
}

// Holds every hit and turn of a ray against a general-purpose library; the number of turns it saw.
int check_against_library(const EyePath& path, const Ray& start) {
    const std::vector<Ray> rays = arrivals(path, start, primary_wavelength);
    Ray before = start;
    int turns = 0;
    for (std::size_t s = 0; s < rays.size(); ++s) {
        const PlacedSurface& surface = path.surfaces[s];
        const Plane plane(to_eigen(surface.world_from_surface.z()),
                          to_eigen(surface.world_from_surface.origin));
        const Line line(to_eigen(before.origin), to_eigen(rays[s].direction));
        CHECK((line.intersectionPoint(plane) - to_eigen(rays[s].origin)).norm()
              < fine_rounding * 100);
        const double index = surface.index_before[primary_wavelength];
        CHECK(near(rays[s].path - before.path, index * line.intersectionParameter(plane),
                   fine_rounding * 100));
        CHECK(near(glm::length(rays[s].direction), 1, fine_rounding));
        before = rays[s];
        if (s == 0) continue;
        const PlacedSurface& last = path.surfaces[s - 1];
        const Eigen::Vector3d n = to_eigen(last.world_from_surface.z());
        const Eigen::Vector3d in = to_eigen(rays[s - 1].direction);
        const Eigen::Vector3d out = to_eigen(rays[s].direction);
        if (last.kind != SurfaceKind::stop) ++turns;
        if (last.kind == SurfaceKind::mirror) {
            CHECK((in - 2 * n.dot(in) * n - out).norm() < fine_rounding);
            continue;
        }
        // Snell's law as a vector equation: n1 (d1 x N) = n2 (d2 x N).
        const double n1 = last.index_before[primary_wavelength];
        const double n2 = last.index_after[primary_wavelength];
        CHECK((n1 * in.cross(n) - n2 * out.cross(n)).norm() < fine_rounding);
        CHECK(in.dot(n) * out.dot(n) > 0);  // it goes through, not back
    }
    return turns;
}

}  // namespace

TEST_CASE("refraction keeps n sin(angle): a ray at 30 degrees enters glass of index 1.5 at 19.4712 "
          "degrees") {
    // asin(sin(30 deg) / 1.5) = asin(1/3), by hand.
    const auto inside = refracted(at_angle(30), 1, 1.5);
    REQUIRE(inside.has_value());
    CHECK(near(inside->y, 1.0 / 3, 1e-15));
    CHECK(near(glm::length(*inside), 1, 1e-15));
    const auto out = refracted(*inside, 1.5, 1);
    REQUIRE(out.has_value());
    CHECK(glm::distance(*out, at_angle(30)) < 1e-15);
}

TEST_CASE("beyond the critical angle nothing leaves the glass") {
    const double critical =
        to_degrees(Radians{std::asin(1 / 1.5168)}).value;  // 41.2452 degrees for n = 1.5168
    CHECK(near(critical, 41.2452, 1e-4));
    CHECK(refracted(at_angle(critical - 1e-6), 1.5168, 1).has_value());
    CHECK_FALSE(refracted(at_angle(critical + 1e-6), 1.5168, 1).has_value());
    CHECK(refracted(at_angle(89), 1, 1.5168).has_value());  // into glass, always
}

TEST_CASE("between media of one index a ray goes straight on") {
    Random random(51);
    for (int i = 0; i < 100; ++i) {
        const Direction along = random_direction_near_z(random, 2);
        CHECK(glm::distance(refracted(along, 1.6, 1.6).value(), along) < 1e-15);
    }
}

TEST_CASE("rays meet planes, turn at mirrors and keep the plane of incidence as a general-purpose "
          "library has it") {
    Random random(52);
    int turns = 0;
    for (int i = 0; i < 300; ++i) {
        const EyePath path = random_tangle(random);
        const Ray start{{random.between(-3, 3), random.between(-3, 3), 0},
                        random_direction_near_z(random, 0.05),
                        0};
        turns += check_against_library(path, start);
    }
    CHECK(turns > 1000);
}

TEST_CASE("along whole rays of a train, from telescope to field stop, that library finds the same "
          "hits and turns") {
    using namespace test_setups;
    Random random(59);
    const Setup setup =
        wide_setup({{"Mirror", MirrorDiagonal{}, {}}, {"Prism", PrismDiagonal{}, {}}});
    const auto train = build_train(setup, setup.chosen, Millimetres{10});
    REQUIRE(train.has_value());
    for (const Eye eye : both_eyes) {
        EyePath path = without_stops(train->path(eye));
        path.surfaces.erase(
            path.surfaces.begin());  // the objective is no surface of that library's
        int turns = 0;
        for (int i = 0; i < 100; ++i) {
            const Ray start{{random.between(-40, 40), random.between(-40, 40), 0}, {}, 0};
            const Point aim{random.between(-10, 10), random.between(-10, 10), 700};
            turns +=
                check_against_library(path, {start.origin, glm::normalize(aim - start.origin), 0});
        }
        CHECK(turns >= 100 * 10);  // two diagonals and the head: every ray went all the way
    }
}

TEST_CASE("a ray sent back from where it ends returns to where it began by the same path") {
    Random random(53);
    int returned = 0;
    for (int i = 0; i < 300; ++i) {
        EyePath path = random_tangle(random);
        const Ray start{{random.between(-3, 3), random.between(-3, 3), 0},
                        random_direction_near_z(random, 0.05),
                        0};
        const RayEnd end = trace_ray(path, start, primary_wavelength);
        if (end.fate != RayFate::reached) continue;  // refused by a face it met too steeply
        EyePath back;
        const Pose half_turn =
            rotation_about_x(degrees(180));  // z along the light that now comes the other way
        for (auto surface = path.surfaces.rbegin() + 1; surface != path.surfaces.rend();
             ++surface) {
            PlacedSurface reversed = *surface;
            reversed.world_from_surface = surface->world_from_surface * half_turn;
            std::swap(reversed.index_before, reversed.index_after);
            back.surfaces.push_back(std::move(reversed));
        }
        back.surfaces.push_back(placed("start", SurfaceKind::stop, half_turn));
        const RayEnd home =
            trace_ray(back, {end.ray.origin, -end.ray.direction, 0}, primary_wavelength);
        CHECK(home.fate == RayFate::reached);
        CHECK(glm::distance(home.ray.origin, start.origin)
              < 1e-8);  // rounding, grown by eight surfaces
        CHECK(glm::distance(home.ray.direction, -start.direction) < 1e-9);
        CHECK(near(home.ray.path, end.ray.path, 1e-8));
        ++returned;
    }
    CHECK(returned > 200);
}

TEST_CASE("a ray ends where it is: outside an opening, at a face that does not hold it, or beside "
          "a plane") {
    const Ray axial{{0, 0, -10}, {0, 0, 1}, 0};
    const auto path_with = [](PlacedSurface surface) {
        EyePath path;
        path.surfaces = {placed("first", SurfaceKind::stop, Pose{}), std::move(surface),
                         placed("last", SurfaceKind::stop, translation(0, 0, 50))};
        return path;
    };
    const RayEnd clipped =
        trace_ray(path_with(placed("hole", SurfaceKind::stop, translation(0, 4, 20), Circle{3.99})),
                  axial, 1);
    CHECK(clipped.fate == RayFate::clipped);
    CHECK(clipped.surface == 1);
    CHECK(clipped.ray.origin == Point{0, 0, 20});
    CHECK(clipped.ray.path == 30);

    PlacedSurface hypotenuse = placed("bare", SurfaceKind::total_reflection,
                                      translation(0, 0, 20) * rotation_about_x(degrees(40)));
    hypotenuse.index_before = hypotenuse.index_after =
        at_all_wavelengths(1.5);  // critical angle 41.81 degrees
    CHECK(trace_ray(path_with(hypotenuse), axial, 1).fate == RayFate::leaked);
    hypotenuse.kind = SurfaceKind::mirror;
    CHECK(trace_ray(path_with(hypotenuse), axial, 1).fate == RayFate::reached);

    const RayEnd missed = trace_ray(
        path_with(placed("edge on", SurfaceKind::stop, rotation_about_x(degrees(90)))), axial, 1);
    CHECK(missed.fate == RayFate::missed);
    CHECK(missed.surface == 1);
}

TEST_CASE("the last opening is where light is counted: it does not clip") {
    PathMaker maker;
    EyePath path = maker.stop(Pose{}).ending_at(translation(0, 0, 10));
    path.surfaces.back().aperture = Circle{1};
    const RayEnd end = trace_ray(path, {{5, 0, -1}, {0, 0, 1}, 0}, 1);
    CHECK(end.fate == RayFate::reached);
    CHECK(end.ray.origin == Point{5, 0, 10});
}

TEST_CASE("the corners of a ray are its start, where it turns, and where it ends, but not the "
          "openings it passes") {
    PathMaker maker;
    const EyePath path =
        maker.stop(Pose{}, Circle{5})
            .mirror(translation(0, 0, 20) * rotation_about_x(degrees(45)))
            .stop(translation(0, 10, 20) * rotation_about_x(degrees(-90)), Circle{2})
            .ending_at(translation(0, 30, 20) * rotation_about_x(degrees(-90)));
    const TracedRay ray = trace_with_corners(path, {{1, 0, -10}, {0, 0, 1}, 0}, 1);
    CHECK(ray.end.fate == RayFate::reached);
    REQUIRE(ray.corners.size() == 3);
    CHECK(ray.corners[0].at == Point{1, 0, -10});
    CHECK_FALSE(ray.corners[0].surface);
    CHECK(glm::distance(ray.corners[1].at, {1, 0, 20}) < fine_rounding);
    CHECK(ray.corners[1].surface == 1);  // the mirror, behind the first opening
    CHECK(near(ray.corners[1].path_in, 30, fine_rounding));
    CHECK(glm::distance(ray.corners[2].at, {1, 30, 20}) < fine_rounding);
    CHECK(ray.corners[2].surface == 3);
    CHECK(near(ray.corners[2].path_in, 60, fine_rounding));
    const TracedRay clipped = trace_with_corners(path, {{3, 0, -10}, {0, 0, 1}, 0}, 1);
    CHECK(clipped.end.fate == RayFate::clipped);
    REQUIRE(clipped.corners.size() == 3);
    CHECK(glm::distance(clipped.corners[2].at, {3, 10, 20}) < fine_rounding);  // where it dies
    CHECK(clipped.corners[2].surface == 2);
}

TEST_CASE("through a plane plate light has gone n d of glass and the air around it") {
    // 20 mm thick, of index 1.5, 10 mm behind z = 0, and a screen 50 mm behind it: 10 + 1.5 * 20 + 20 mm.
    const EyePath path = PathMaker()
                             .face(translation(0, 0, 10), 1.5)
                             .face(translation(0, 0, 30), 1)
                             .ending_at(translation(0, 0, 50));
    const auto straight = trace_with_corners(path, {{0, 0, 0}, {0, 0, 1}, 0}, 1).corners;
    REQUIRE(straight.size() == 4);
    CHECK(near(straight[1].path_in, 10, fine_rounding));
    CHECK(near(straight[2].path_in, 40, fine_rounding));
    CHECK(near(straight[3].path_in, 60, fine_rounding));
    // At 30 degrees: each length over the cosine there; sin 30 = 1.5 sin (in glass), by Snell's law.
    const double in_air = std::sqrt(1 - 0.25);
    const double in_glass = std::sqrt(1 - 0.25 / 2.25);
    const auto oblique = trace_with_corners(path, {{0, 0, 0}, {0.5, 0, in_air}, 7}, 1).corners;
    CHECK(near(oblique[3].path_in, 7 + 30 / in_air + 1.5 * 20 / in_glass, fine_rounding));
}
