#include <cmath>
#include <numbers>

#include "geometry/pose.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

#include <Eigen/Geometry>

using namespace beamfork;

namespace {

constexpr double fine_rounding = 1e-12;

Eigen::Vector3d to_eigen(const glm::dvec3& v) { return {v.x, v.y, v.z}; }

Direction random_direction(Random& random) {
    const double z = random.between(-1, 1);
    const double turn = random.between(0, 2 * std::numbers::pi);
    const double r = std::sqrt(1 - z * z);
    return {r * std::cos(turn), r * std::sin(turn), z};
}

struct Both {
    Pose ours;
    Eigen::Isometry3d other;
};

// The same random chain of turns and shifts in this program's terms and in those of a general-purpose library.
Both random_chain(Random& random) {
    Both both{Pose{}, Eigen::Isometry3d::Identity()};
    for (int i = 0; i < 4; ++i) {
        const Radians angle{random.between(-4, 4)};
        const glm::dvec3 shift{random.between(-50, 50), random.between(-50, 50),
                               random.between(-50, 50)};
        const std::size_t axis = random.below(3);
        const Pose turn = axis == 0   ? rotation_about_x(angle)
                          : axis == 1 ? rotation_about_y(angle)
                                      : rotation_about_z(angle);
        both.ours = both.ours * turn * translation(shift.x, shift.y, shift.z);
        both.other =
            both.other
            * Eigen::AngleAxisd(angle.value, Eigen::Vector3d::Unit(static_cast<Eigen::Index>(axis)))
            * Eigen::Translation3d(to_eigen(shift));
    }
    return both;
}

}  // namespace

TEST_CASE("a chain of turns and shifts carries points as a general-purpose library does") {
    Random random(31);
    for (int i = 0; i < 200; ++i) {
        const Both both = random_chain(random);
        const Point local{random.between(-50, 50), random.between(-50, 50),
                          random.between(-50, 50)};
        CHECK((to_eigen(both.ours.point_out(local)) - both.other * to_eigen(local)).norm()
              < fine_rounding * 300);
        CHECK((to_eigen(both.ours.direction_out(local)) - both.other.linear() * to_eigen(local))
                  .norm()
              < fine_rounding * 300);
        CHECK(glm::distance(both.ours.point_in(both.ours.point_out(local)), local)
              < fine_rounding * 300);
        CHECK(glm::distance(both.ours.direction_in(both.ours.direction_out(local)), local)
              < fine_rounding * 300);
        CHECK(glm::distance(inverse(both.ours).point_out(both.ours.point_out(local)), local)
              < fine_rounding * 300);
    }
}

TEST_CASE("quarter turns are exact to the last bit, so that a straight train stays straight") {
    const auto quarter = [](double degrees) { return to_radians(Degrees{degrees}); };
    CHECK(rotation_about_x(quarter(-90)).direction_out({0, 0, 1}) == Direction{0, 1, 0});
    CHECK(rotation_about_x(quarter(90)).direction_out({0, 1, 0}) == Direction{0, 0, 1});
    CHECK(rotation_about_y(quarter(90)).direction_out({0, 0, 1}) == Direction{1, 0, 0});
    CHECK(rotation_about_z(quarter(90)).direction_out({1, 0, 0}) == Direction{0, 1, 0});
    CHECK(rotation_about_z(quarter(-270)).direction_out({1, 0, 0}) == Direction{0, 1, 0});
    CHECK(rotation_about_z(quarter(360)) == Pose{});
    CHECK(rotation_about_x(quarter(180)) * rotation_about_x(quarter(180)) == Pose{});
}

TEST_CASE(
    "a frame that faces a direction is right-handed, of unit axes, and leans towards its hint") {
    Random random(32);
    for (int i = 0; i < 200; ++i) {
        const Direction z = random_direction(random);
        const Direction hint = random_direction(random);
        if (glm::length(glm::cross(z, hint)) < 0.05) continue;
        const Pose pose = pose_facing({1, 2, 3}, z, hint);
        CHECK(glm::distance(pose.z(), z) < fine_rounding);
        CHECK(glm::distance(glm::cross(pose.x(), pose.y()), pose.z()) < fine_rounding);
        CHECK(near(glm::length(pose.x()), 1, fine_rounding));
        CHECK(near(glm::dot(pose.x(), pose.z()), 0, fine_rounding));
        CHECK(
            near(glm::dot(pose.y(), hint), 0, fine_rounding));  // nothing of the hint is left aside
        CHECK(glm::dot(pose.x(), hint) > 0);
        CHECK(pose.origin == Point{1, 2, 3});
    }
}

TEST_CASE("a mirror reflects as a general-purpose library's reflection does, and twice is back") {
    Random random(33);
    for (int i = 0; i < 200; ++i) {
        const Direction in = random_direction(random);
        const Direction normal = random_direction(random);
        const Eigen::Vector3d n = to_eigen(normal);
        const Eigen::Matrix3d reflect = Eigen::Matrix3d::Identity() - 2 * n * n.transpose();
        const Direction out = mirrored(in, normal);
        CHECK((to_eigen(out) - reflect * to_eigen(in)).norm() < fine_rounding);
        CHECK(near(glm::dot(out, normal), -glm::dot(in, normal),
                   fine_rounding));  // angle in = angle out
        CHECK(glm::distance(mirrored(out, normal), in) < fine_rounding);
    }
}
