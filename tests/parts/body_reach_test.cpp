// How far bodies reach, against plane geometry.
#include <cmath>
#include <numbers>

#include "parts/body_reach.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

constexpr Direction straight_on{0, 0, 1};

Pose tilted(double degrees) { return rotation_about_x(Radians{degrees * std::numbers::pi / 180}); }

}  // namespace

TEST_CASE("a tilted tube reaches L cos t + r sin t") {
    const TubeBody tube{100, 18, 20};
    for (const double degrees : {0.0, 30.0, 45.0, 90.0}) {
        CAPTURE(degrees);
        const double t = degrees * std::numbers::pi / 180;
        CHECK(near(reach_of(tube, tilted(degrees), straight_on),
                   100 * std::cos(t) + 20 * std::sin(t), 1e-9));
    }
    // Seen from its other end it begins at the origin.
    CHECK(near(reach_of(tube, translation(0, 0, 7), -straight_on), -7, rounding));
}

TEST_CASE("a plate reaches as far as its farthest corner") {
    const PlateBody square{{{-10, -10}, {10, -10}, {10, 10}, {-10, 10}}, 2, 0};
    CHECK(near(reach_of(square, Pose{}, straight_on), 2, rounding));
    // At 45 degrees: half the diagonal of a side of 20 and a thickness of 2, (10 + 2) / sqrt 2.
    CHECK(near(reach_of(square, tilted(45), straight_on), 12 / std::sqrt(2.0), 1e-9));
}

TEST_CASE("a block of glass reaches as far as its farthest corner") {
    const GlassBody wedge{{{0, 0, 0}, {10, 0, 0}, {0, 10, 0}, {0, 0, 5}}, {}};
    CHECK(near(reach_of(wedge, Pose{}, straight_on), 5, rounding));
    CHECK(near(reach_of(wedge, Pose{}, Direction{1, 0, 0}), 10, rounding));
    CHECK(near(reach_of(wedge, translation(0, 0, 3), straight_on), 8, rounding));
}

TEST_CASE("a bowl's rim reaches farther back than its middle") {
    const LensBody bowl{.radius = 50, .edge_thickness = 4, .bulge = 0, .bowl = 9};
    CHECK(near(reach_of(bowl, Pose{}, straight_on), 2, rounding));
    CHECK(near(reach_of(bowl, Pose{}, -straight_on), 11, rounding));
}
