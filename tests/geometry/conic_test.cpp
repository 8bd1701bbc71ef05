// Conics against their closed forms.
#include <cmath>

#include "geometry/conic.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE(
    "a paraboloid rises with the square of the distance from its axis, a sphere as a circle does") {
    const double R = 800;
    for (const double r : {0.0, 10.0, 55.0, 140.0}) {
        // Closed forms: r^2 / (2 R); R - sqrt(R^2 - r^2). Rounding only.
        CHECK(near(sag({1 / R, -1}, r), r * r / (2 * R), 1e-12));
        CHECK(near(sag({-1 / R, -1}, r), -r * r / (2 * R), 1e-12));
        CHECK(near(sag({1 / R, 0}, r), R - std::sqrt(R * R - r * r), 1e-11));
    }
}

TEST_CASE(
    "a ray from the vertex plane is carried onto the surface, whichever way the conic bends") {
    Random random(11);
    for (int i = 0; i < 500; ++i) {
        const Conic conic{random.between(-1, 1) / 300, random.between(-4, 0.5)};
        const Point from{random.between(-60, 60), random.between(-60, 60), 0};
        const Direction along = glm::normalize(Direction{
            random.between(-0.2, 0.2), random.between(-0.2, 0.2), random.chance(0.5) ? 1 : -1});
        const auto distance = distance_to(conic, from, along);
        REQUIRE(distance);
        const Point at = from + *distance * along;
        CHECK(near(at.z, sag(conic, std::hypot(at.x, at.y)), 1e-10));  // rounding
    }
}

TEST_CASE("a ray that runs past a sphere does not meet it") {
    CHECK_FALSE(distance_to({1.0 / 50, 0}, {60, 0, 0}, {0, 0, 1}));
}

TEST_CASE("the normal of a sphere points to its middle") {
    const double R = 200;
    const Conic sphere{1 / R, 0};
    const Point at{30, -40, sag(sphere, 50)};
    const Direction to_middle = glm::normalize(Point{0, 0, R} - at);
    CHECK(glm::distance(-normal_at(sphere, at), to_middle) < 1e-12);
}
