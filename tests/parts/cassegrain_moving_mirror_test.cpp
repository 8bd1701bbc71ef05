// A moving-mirror Cassegrain against the two-mirror formulas.
#include "parts/cassegrain_moving_mirror.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// f1 = 400 and |f2| = 100 with the image 400 behind the secondary: p = 80, b = 5 p, the mirrors 320 apart.
CassegrainMovingMirror worked_example() {
    CassegrainMovingMirror telescope;
    telescope.aperture = {200};
    telescope.focal_length = {2000};
    telescope.primary_focal_length = {400};
    telescope.rear_face = {10};
    telescope.back_focus = {70};
    return telescope;
}

}  // namespace

TEST_CASE("the mirrors of a Cassegrain stand where its focal lengths and back focus put them") {
    const CassegrainMovingMirror telescope = worked_example();
    CHECK(near(telescope.secondary_focal_length().value, 100, 1e-10));
    CHECK(near(telescope.mirror_distance().value, 320, 1e-10));
    const MirrorFocus focus = telescope.focus_at({0}, {});
    CHECK(near(focus.back_focus.value, 70, 1e-9));
    CHECK(near(focus.focal_length.value, 2000, 1e-9));
}

TEST_CASE("100 mm more back focus make 400 mm more focal length for 3.33 mm of the main mirror") {
    // F = f1 (1 + b / |f2|): derived from the two-mirror formulas (W. J. Smith, Modern Optical Engineering, 4th ed.);
    // b 400 -> 500 makes F 2000 -> 2400, and p = b |f2| / (b + |f2|) goes from 80 to 83.33.
    const CassegrainMovingMirror telescope = worked_example();
    const Millimetres moved = telescope.moved_for({170}, {});
    CHECK(near(moved.value, 10.0 / 3, 1e-10));
    CHECK(near(telescope.focus_at(moved, {}).focal_length.value, 2400, 1e-8));
    CHECK(near(telescope.focus_at(moved, {}).back_focus.value, 170, 1e-8));
    CHECK(near(telescope.focal_length_per_back_focus(), 4, 1e-12));
}

TEST_CASE("a near target needs the primary farther down, by f1^2 / (u - f1)") {
    const CassegrainMovingMirror telescope = worked_example();
    const double rim = 200.0 * 200 / (16 * 400);  // distances count from the primary's rim
    const double shift =
        400.0 * 400 / (20000 + rim - 400);  // Newton's equation for the primary alone
    CHECK(near(telescope.moved_for({70}, Millimetres{20000}).value, -shift, 1e-10));
}

TEST_CASE("a Cassegrain that cannot be built says why") {
    CHECK_FALSE(CassegrainMovingMirror{}.contradiction());
    CassegrainMovingMirror telescope;
    telescope.travel_up = {60};
    REQUIRE(telescope.contradiction());
    CHECK(telescope.contradiction()->find("primary_travel_up_mm") != std::string::npos);
    telescope = {};
    telescope.focal_length = {700};
    CHECK(telescope.contradiction());
    telescope = {};
    telescope.baffle_diameter = {70};
    CHECK(telescope.contradiction());
}
