// A Newtonian laid out: where its mirrors stand and what it can light.
#include <cmath>

#include "parts/newtonian.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE(
    "the secondary folds the light so that the focus lies its back focus behind the drawtube") {
    Newtonian telescope;
    const PartLayout layout = telescope.layout({});
    const Surface& flat = layout.surfaces.back();
    // From the primary to the flat and on to the focus is one focal length; the fold is square.
    const double to_flat = -flat.part_from_surface.origin.z;
    const double to_rear = layout.part_from_exit.origin.y;
    CHECK(
        near(to_flat + to_rear + telescope.back_focus.value, telescope.focal_length.value, 1e-12));
    CHECK(layout.part_from_exit.z() == Direction{0, 1, 0});
    CHECK(glm::distance(mirrored({0, 0, -1}, flat.part_from_surface.z()), Direction{0, 1, 0})
          < 1e-15);
}

TEST_CASE(
    "moving the main mirror up brings it nearer to the secondary and the focus out by as much") {
    Newtonian telescope;
    const double before = telescope.layout({}).surfaces.back().part_from_surface.origin.z;
    telescope.primary_moved_up = {25};
    CHECK(
        near(telescope.layout({}).surfaces.back().part_from_surface.origin.z, before + 25, 1e-12));
    CHECK(near(telescope.secondary_to_focus().value, 160 + 30 + 25, 1e-12));
}

TEST_CASE("seen along the tube and from the focuser the secondary is a circle of its minor axis") {
    const Newtonian telescope;
    const Surface flat = telescope.layout({}).surfaces.back();
    const auto edge = outline(flat.aperture, 90);
    double low = 0;
    double high = 0;
    for (const glm::dvec2& corner : edge) {
        const Point at = flat.part_from_surface.point_out({corner, 0});
        low = std::min(low, at.y);
        high = std::max(high, at.y);
        CHECK(near(at.y, -(at.z - flat.part_from_surface.origin.z), 1e-12));  // at 45 degrees
    }
    const double minor = telescope.secondary_minor_axis.value;
    CHECK(near(high - low, minor, 0.05));  // 90 corners miss the extremes by up to 0.06 %
    // Its middle lies minor / (4 N) off the axis, away from the focuser. Common practice, no source; it is what
    // centres a 45 degree cut of a cone to first order.
    CHECK(near((high + low) / 2, -minor / (4 * 5), 0.05));
}

TEST_CASE("a stated offset stands the flat where it says: 0 on the tube's axis") {
    Newtonian telescope;
    CHECK(near(telescope.offset().value, 52.0 / (4 * 5), 1e-12));  // minor axis / (4 N)
    telescope.secondary_offset = {0};
    const Surface flat = telescope.layout({}).surfaces.back();
    double sum = 0;
    for (const glm::dvec2& corner : outline(flat.aperture, 90))
        sum += flat.part_from_surface.point_out({corner, 0}).y / 90;
    CHECK(near(sum, 0, 1e-9));
    telescope.secondary_offset = {7};
    const Surface shadow = telescope.layout({}).surfaces.at(1);
    CHECK(shadow.part_from_surface.origin.y == -7);
}

TEST_CASE("the fully lit field of a secondary follows from similar triangles") {
    Newtonian telescope;
    telescope.aperture = {200};
    telescope.focal_length = {1000};
    telescope.axis_to_drawtube = {160};
    telescope.back_focus = {40};
    telescope.secondary_minor_axis = {50};
    // Cone of 200 mm that shrinks over 1000 mm: 40 mm wide at 200 before the focus. (50 - 40) there is
    // (50 * 1000 - 200 * 200) / 800 = 12.5 mm in the focal plane (common practice; plain geometry).
    CHECK(near(telescope.fully_lit_field().value, 12.5, 1e-12));
    telescope.secondary_minor_axis = {40};
    CHECK(near(telescope.fully_lit_field().value, 0, 1e-12));
}

TEST_CASE("a Newtonian that cannot be built says why") {
    Newtonian telescope;
    telescope.axis_to_drawtube = {100};
    REQUIRE(telescope.contradiction());
    CHECK(telescope.contradiction()->find("axis_to_drawtube_mm") != std::string::npos);
    telescope = {};
    telescope.tube_diameter = {190};
    CHECK(telescope.contradiction());
    telescope = {};
    telescope.focal_length = {450};
    CHECK(telescope.contradiction());
    CHECK_FALSE(Newtonian{}.contradiction());
}

TEST_CASE("the vanes' shadow is their width times their length from the holder to the rim") {
    Newtonian telescope;
    telescope.holder_diameter = Millimetres{60};
    // Plane geometry: 4 x 0.8 x (200 - 60) / 2 = 224 of 31415.93 mm^2.
    CHECK(near(telescope.vane_share(), 224 / 31415.9265, 1e-9));
    telescope.vane_count = 0;
    CHECK(telescope.vane_share() == 0);
    telescope.vane_count = 8;
    telescope.vane_width = {20};
    CHECK(telescope.contradiction());
}
