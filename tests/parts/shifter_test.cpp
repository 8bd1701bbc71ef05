#include "base/contract.hpp"
#include "parts/shifter.hpp"
#include "reference/negative_lens.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("a stated factor and gain make the lens and the distance at which both hold") {
    for (const auto& row : reference::stated_lenses) {
        CAPTURE(row.factor);
        const StatedPair lens = lens_of_stated_pair(row.factor, Millimetres{row.gain});
        CHECK(near(lens.focal_length.value, -row.focal_length, 1e-5));  // last printed digit
        CHECK(near(lens.image_distance.value, row.image_distance, 1e-5));
        CHECK(near(shifter_factor(lens.focal_length, lens.image_distance), row.factor, 1e-12));
        CHECK(near(shifter_gain(lens.focal_length, lens.image_distance).value, row.gain, 1e-11));
        CHECK(near(lens.image_distance.value / row.factor, row.object_distance, 1e-5));
    }
}

TEST_CASE("the same lens at another distance has another factor and another gain") {
    const Millimetres focal{-reference::moved_lens_focal_length};
    for (const auto& row : reference::moved_lenses) {
        CAPTURE(row.image_distance);
        const Millimetres distance{row.image_distance};
        CHECK(near(shifter_factor(focal, distance), row.factor, 1e-5));  // last printed digit
        CHECK(near(shifter_gain(focal, distance).value, row.gain, 1e-5));
        CHECK(near(distance.value / shifter_factor(focal, distance), row.object_distance, 1e-5));
    }
}

TEST_CASE("factor, gain and distances of any thin lens obey the thin-lens equation") {
    Random random(43);
    for (int i = 0; i < 500; ++i) {
        const double f = random.between(-300, -20);
        const double d = random.between(20, 300);
        const double s = d / shifter_factor(Millimetres{f}, Millimetres{d});
        CHECK(near(1 / d, 1 / s + 1 / f, 1e-15));  // rounding of numbers below 0.05
        CHECK(near(shifter_gain(Millimetres{f}, Millimetres{d}).value, d - s, 1e-11));
        CHECK(shifter_gain(Millimetres{f}, Millimetres{d}).value
              > 0);  // a negative lens gives light path back
        CHECK(shifter_gain(Millimetres{-f}, Millimetres{d / 20}).value
              < 0);  // a positive one takes some
    }
}

TEST_CASE("a shifter given by its focal length keeps it, one given by its pair derives it") {
    Shifter shifter;
    shifter.given = ShifterGiven::focal_length;
    shifter.focal_length = Millimetres{-80};
    CHECK(shifter.lens_focal_length() == Millimetres{-80});
    shifter.given = ShifterGiven::factor_and_gain;
    shifter.stated_factor = 2;
    shifter.stated_gain = Millimetres{40};
    CHECK(near(shifter.lens_focal_length().value, -80, 1e-12));
    CHECK_THROWS_AS(lens_of_stated_pair(1, Millimetres{10}), BrokenContract);
}

TEST_CASE("the lens sits where its cell has it and adds the cell's length to the train") {
    Shifter shifter;
    shifter.lens_offset = Millimetres{-12};
    shifter.length = Millimetres{8};
    const PartLayout layout = shifter.layout({});
    REQUIRE(layout.surfaces.size() == 1);
    CHECK(layout.surfaces[0].kind == SurfaceKind::thin_lens);
    CHECK(layout.surfaces[0].part_from_surface == translation(0, 0, -12));
    CHECK(layout.part_from_exit == translation(0, 0, 8));
}
