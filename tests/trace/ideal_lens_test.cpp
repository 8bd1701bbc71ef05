// The ideal objective and the ideal thin lens: one image point for all rays, by one optical path.
#include <cmath>

#include "reference/vignetting.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double lens_focal_length = 480;
constexpr double lens_radius = 40;

glm::dvec2 random_pupil(Random& random) {
    for (;;) {
        const glm::dvec2 at{random.between(-lens_radius, lens_radius),
                            random.between(-lens_radius, lens_radius)};
        if (glm::length(at) <= lens_radius) return at;
    }
}

}  // namespace

TEST_CASE("all rays of a star meet in one point by one optical path, at F times the tangent of its "
          "angle") {
    Random random(55);
    for (const glm::dvec2 field :
         {glm::dvec2{0, 0}, glm::dvec2{0.02, 0}, glm::dvec2{-0.01, 0.03}}) {
        PathMaker maker;
        const EyePath path =
            maker.objective(lens_focal_length).ending_at(translation(0, 0, lens_focal_length));
        const Direction along = glm::normalize(Direction{field, 1});
        // From a plane wavefront through the point 10 mm before the lens's middle, along the light.
        const auto arrive = [&](const glm::dvec2& pupil) {
            const Point at{pupil, 0};
            return trace_ray(path, {at - (10 + glm::dot(at, along)) * along, along, 0}, 1).ray;
        };
        const Ray chief = arrive({0, 0});
        CHECK(glm::distance(chief.origin, Point{lens_focal_length * field, lens_focal_length})
              < 1e-9);
        CHECK(
            near(chief.path, 10 + lens_focal_length * std::sqrt(1 + glm::dot(field, field)), 1e-9));
        for (int i = 0; i < 100; ++i) {
            const Ray ray = arrive(random_pupil(random));
            CHECK(glm::distance(ray.origin, chief.origin) < 1e-9);  // rounding of 480 mm
            CHECK(near(ray.path, chief.path, 1e-9));
        }
    }
}

TEST_CASE("the objective obeys the sine condition: on the axis sin U' is the height over the focal "
          "length") {
    PathMaker maker;
    const EyePath path =
        maker.objective(lens_focal_length).ending_at(translation(0, 0, lens_focal_length));
    for (double height = 2; height <= lens_radius; height += 2) {
        const Ray ray = trace_ray(path, {{0, height, -10}, {0, 0, 1}, 0}, 1).ray;
        CHECK(near(-ray.direction.y, height / lens_focal_length, 1e-15));
    }
}

TEST_CASE("all rays of a near target meet at its image by one optical path") {
    Random random(56);
    constexpr double distance = 20'000;
    const double image =
        distance * lens_focal_length / (distance - lens_focal_length);  // 1/u + 1/v = 1/F
    for (const glm::dvec2 target : {glm::dvec2{0, 0}, glm::dvec2{300, -150}}) {
        PathMaker maker;
        const EyePath path = maker.from_target(distance)
                                 .objective(lens_focal_length)
                                 .ending_at(translation(0, 0, image));
        const Point object{target, -distance};
        const auto arrive = [&](const glm::dvec2& pupil) {
            return trace_ray(path, {object, glm::normalize(Point{pupil, 0} - object), 0}, 1).ray;
        };
        const Ray chief = arrive({0, 0});
        CHECK(glm::distance(glm::dvec2(chief.origin), -target * (image / distance))
              < 1e-9);  // upside down
        for (int i = 0; i < 100; ++i) {
            const Ray ray = arrive(random_pupil(random));
            CHECK(glm::distance(ray.origin, chief.origin) < 1e-8);  // rounding of 20 m
            CHECK(near(ray.path, chief.path, 1e-8));
        }
    }
}

TEST_CASE("a thin lens turns every cone into a cone about its image point, by one optical path") {
    Random random(57);
    for (const double focal : {-66.0, -120.0, 90.0}) {
        for (const double to_object : {30.0, 50.0, 62.0}) {
            CAPTURE(focal);
            CAPTURE(to_object);
            const double to_image =
                1 / (1 / to_object + 1 / focal);  // thin-lens equation, object behind the lens
            PathMaker maker;
            const EyePath path = maker.stop(Pose{})
                                     .thin_lens(translation(0, 0, 20), focal, to_object)
                                     .ending_at(translation(0, 0, 20 + to_image));
            const glm::dvec2 side{random.between(-8, 8), random.between(-8, 8)};
            const Point object{side, 20 + to_object};
            const Point image{side * (to_image / to_object), 20 + to_image};
            // Through the lens's middle light goes straight on: from its sphere of 200 mm to the image.
            const Point middle{0, 0, 20};
            const double to_object_point = glm::distance(object, middle);
            const double length =
                200 - to_object_point + std::copysign(glm::distance(image, middle), to_image);
            for (int i = 0; i < 50; ++i) {
                const Point on_lens{random.between(-10, 10), random.between(-10, 10), 20};
                const Direction along = glm::normalize(object - on_lens);
                // From a sphere about the object point, so that every ray starts with the same path.
                const Ray end = trace_ray(path, {object - 200.0 * along, along, 0}, 1).ray;
                CHECK(glm::distance(end.origin, image) < 1e-10 * std::max(1.0, std::abs(to_image)));
                CHECK(near(end.path, length, 1e-9 * std::max(1.0, std::abs(to_image))));
            }
        }
    }
}

TEST_CASE("a lens that stands just where the image falls leaves every number finite and bends "
          "light as ever") {
    PathMaker maker;
    const EyePath path = maker.stop(Pose{})
                             .thin_lens(translation(0, 0, 50), -66, 0)
                             .ending_at(translation(0, 0, 80));
    const Direction along = glm::normalize(Direction{0.05, -0.02, 1});
    const Ray end = trace_ray(path, {Point{0, 0, 50} - 50.0 * along, along, 0}, 1).ray;
    CHECK(near(end.path, 50 + 30 / along.z, 1e-9));  // through the lens's middle: straight on
    const Ray beside = trace_ray(path, {{4, 0, 0}, {0, 0, 1}, 0}, 1).ray;
    CHECK(std::isfinite(beside.path));
    CHECK(near(beside.origin.x, 4 + 30 * 4 / 66.0, 1e-9));
}

TEST_CASE("a ray goes back through a thin lens the way it came") {
    Random random(58);
    for (int i = 0; i < 100; ++i) {
        const double focal = random.between(-150, -40);
        const double to_object = random.between(20, 0.9 * -focal);
        const double to_image = 1 / (1 / to_object + 1 / focal);
        PathMaker there;
        const EyePath path = there.stop(Pose{})
                                 .thin_lens(translation(0, 0, 20), focal, to_object)
                                 .ending_at(translation(0, 0, 90));
        const Pose turned = rotation_about_x(to_radians(Degrees{180}));
        PathMaker back;
        const EyePath reversed = back.stop(translation(0, 0, 90) * turned)
                                     .thin_lens(translation(0, 0, 20) * turned, focal,
                                                -to_image)  // its object now lies before it
                                     .ending_at(turned);
        const Ray start{{random.between(-5, 5), random.between(-5, 5), 0},
                        random_direction_near_z(random, 0.1),
                        0};
        const Ray end = trace_ray(path, start, 1).ray;
        const Ray home = trace_ray(reversed, {end.origin, -end.direction, 0}, 1).ray;
        CHECK(glm::distance(home.origin, start.origin) < 1e-10);
        CHECK(glm::distance(home.direction, -start.direction) < 1e-12);
        CHECK(near(home.path, end.path, 1e-9));
    }
}

TEST_CASE("each wavelength has the objective's focal length for it") {
    EyePath path;
    path.surfaces = {placed("objective", SurfaceKind::objective, Pose{}),
                     placed("end", SurfaceKind::stop, translation(0, 0, 400))};
    path.surfaces[0].focal_length = {481, 480, 482};
    path.object_distance = std::numeric_limits<double>::infinity();
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        const Ray ray = trace_ray(path, {{0, 1, -10}, {0, 0, 1}, 0}, w).ray;
        CHECK(near(crossing_of_axis(ray, Pose{}), path.surfaces[0].focal_length[w], 1e-9));
    }
}

TEST_CASE("seen through the lens of a 2.6x pair the objective is a near, small pupil, and the cone "
          "is slower by 2.6") {
    // The pair (2.6x, 65 mm): |f| = 66.015625, 40.625 mm before the focus of a 100 mm f/7 telescope.
    constexpr double to_lens = 700 - 40.625;
    PathMaker maker;
    const EyePath path = maker.objective(700)
                             .thin_lens(translation(0, 0, to_lens), -66.015625, 40.625)
                             .ending_at(translation(0, 0, 800));
    const auto behind = [&](double height, double slope) {
        return trace_ray(path,
                         {{0, height - 10 * slope, -10}, glm::normalize(Direction{0, slope, 1}), 0},
                         1)
            .ray;
    };
    const double small = 1e-4;
    CHECK(near(to_lens - crossing_of_axis(behind(0, small), Pose{}), reference::pupil_before_lens,
               1e-4));
    // Two rays through one point near the objective's middle leave the point's image: its height scales the pupil.
    const Ray a = behind(0.01, small);
    const Ray b = behind(0.01, -small);
    const double slope_a = a.direction.y / a.direction.z;
    const double slope_b = b.direction.y / b.direction.z;
    const double z = -(a.origin.y - b.origin.y) / (slope_a - slope_b);
    CHECK(near((a.origin.y + slope_a * z) / 0.01 * 100, reference::pupil_diameter, 1e-4));
    const double focus = crossing_of_axis(behind(0.01, 0), Pose{});
    CHECK(near(focus - to_lens, 105.625, 1e-4));
    CHECK(near(focus - (800 + z), reference::pupil_to_focus,
               1e-3));  // a pupil image of 0.01 mm, by differences
    const double cone =
        -behind(0.01, 0).direction.y / 0.01 * 100;  // of the whole aperture, near the axis
    CHECK(near(1 / cone, reference::pupil_f_number, 1e-4));
}
