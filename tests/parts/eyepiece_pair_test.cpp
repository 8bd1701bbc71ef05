#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "reference/visual_telescope.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("an eyepiece moves by its focal length squared over a metre for one dioptre") {
    for (const auto& row : reference::dioptre_travels) {
        CAPTURE(row.focal_length);
        CHECK(near(travel_per_dioptre(Millimetres{row.focal_length}).value, row.travel,
                   1e-9));  // rounding
    }
}

TEST_CASE("the field stop lies as deep in the barrel as stated and moves with its seat") {
    EyepiecePair eyepiece;
    eyepiece.field_stop_depth = Millimetres{7};
    LayoutContext context;
    context.seat_shift = Millimetres{1.5};
    const PartLayout layout = eyepiece.layout(context);
    CHECK(layout.part_from_exit == translation(0, 0, -5.5));
    REQUIRE(layout.surfaces.size() == 2);
    CHECK(layout.surfaces[0].name == "barrel");
    CHECK(layout.surfaces[0].part_from_surface
          == translation(0, 0, 1.5 - eyepiece.barrel_length.value));
    CHECK(layout.surfaces[1].name == "field stop");
    CHECK(layout.surfaces[1].part_from_surface == layout.part_from_exit);
    CHECK(inner_radius(layout.surfaces[1].aperture) == eyepiece.field_stop.value / 2);
}

TEST_CASE("spectacles taken off are made up for at the eye, not where the lens stood") {
    // A lens of -8 D brings the far point to 125 mm in front of it, 125 + 14 + 1.6 = 140.6 mm in front of the eye's
    // principal point, for +8 D it is 125 - 15.6 = 109.4 mm behind. 14 mm: common practice, no source; 1.6 mm:
    // Gullstrand's schematic eye, from memory.
    Observer observer;
    observer.left = Dioptres{-8};
    observer.right = Dioptres{8};
    CHECK(near(observer.correction(Eye::left).value, -1000 / 140.6, 1e-12));
    CHECK(near(observer.correction(Eye::right).value, 1000 / 109.4, 1e-12));
    // An eyepiece of 30 mm: 0.9 mm for each dioptre, 7.20 mm by the prescription's number alone.
    const double travel = travel_per_dioptre(Millimetres{30}).value;
    CHECK(near(-observer.correction(Eye::left).value * travel, 6.40, 0.005));  // printed digits
    CHECK(observer.left == Dioptres{-8});
}

TEST_CASE("spectacles kept on leave nothing for the eyepiece to correct") {
    Observer observer;
    observer.left = Dioptres{-3};
    observer.right = Dioptres{1.5};
    CHECK(observer.correction(Eye::left).value < -2.5);
    CHECK(observer.correction(Eye::right).value > 1.5);
    observer.spectacles = Spectacles::kept_on;
    CHECK(observer.correction(Eye::left) == Dioptres{0});
    CHECK(observer.correction(Eye::right) == Dioptres{0});
}
