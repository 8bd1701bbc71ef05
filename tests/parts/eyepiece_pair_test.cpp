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

TEST_CASE("spectacles kept on leave nothing for the eyepiece to correct") {
    Observer observer;
    observer.left = Dioptres{-3};
    observer.right = Dioptres{1.5};
    CHECK(observer.correction(Eye::left) == Dioptres{-3});
    CHECK(observer.correction(Eye::right) == Dioptres{1.5});
    observer.spectacles = Spectacles::kept_on;
    CHECK(observer.correction(Eye::left) == Dioptres{0});
    CHECK(observer.correction(Eye::right) == Dioptres{0});
}
