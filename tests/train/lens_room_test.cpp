// A lens that is said to stand in glass. Where the glass stands is summed up by hand.
#include <stdexcept>

#include "parts/filter_plate.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "train/train.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Train train_of(const Setup& setup) {
    auto train = build_train(setup, setup.chosen, Millimetres{0});
    REQUIRE(train.has_value());
    return *std::move(train);
}

// The head states 6 mm before its cube.
Setup with_lens(double offset, const std::vector<Part>& before = {}) {
    std::vector<Part> chain = before;
    chain.push_back(bare_lens(-100, offset));
    Setup setup = plain_setup(chain);
    the<SplitterHead>(setup).entry_air = Millimetres{6};
    return setup;
}

const PlacedSurface& lens_in(const EyePath& path) {
    for (const PlacedSurface& surface : path.surfaces) {
        if (surface.kind == SurfaceKind::thin_lens) return surface;
    }
    throw std::logic_error("no lens");
}

}  // namespace

TEST_CASE("a lens has room up to the cube behind it and to the prism before it") {
    const Train train = train_of(with_lens(4, {{"Diagonal", PrismDiagonal{}, {}}}));
    REQUIRE(train.lens_rooms.size() == 1);
    const LensRoom& room = train.lens_rooms.front();
    CHECK(room.part == 3);
    CHECK(room.stated == 4);
    CHECK(room.placed() == 4);
    CHECK(room.inside() == 0);
    CHECK(near(room.behind.place, 6, rounding));
    CHECK(room.behind.face == "cube entry face");
    CHECK(room.behind.part == 4);
    CHECK(
        near(room.before.place, -9.5, rounding));  // an exit leg of 22 less half of 25 mm of prism
    CHECK(room.before.face == "prism exit face");
    CHECK(room.spare == 0);
}

TEST_CASE("a ring between lens and head is room, a filter in between ends it") {
    Setup setup = with_lens(4);
    setup.parts.insert(setup.parts.begin() + 3,
                       {"Ring", Spacer{Millimetres{15}, Millimetres{40}}, {}});
    setup = with_valid_choice(setup);
    CHECK(near(train_of(setup).lens_rooms.front().behind.place, 21, rounding));
    setup.parts.insert(setup.parts.begin() + 4, {"Filter", FilterPlate{}, {}});
    setup = with_valid_choice(setup);
    // 15 mm of ring, then a plate of 2 mm in the middle of its own ring of 6.
    CHECK(near(train_of(setup).lens_rooms.front().behind.place, 17, rounding));
}

TEST_CASE("a lens that is said to stand in the glass is laid out at its face, for both eyes, and "
          "everything follows from there") {
    const Train in_glass = train_of(with_lens(60));
    const Train at_glass = train_of(with_lens(6));
    CHECK(near(in_glass.lens_rooms.front().inside(), 54, rounding));
    CHECK(in_glass.lens_rooms.front().stated == 60);
    CHECK(near(in_glass.lens_rooms.front().placed(), 6, rounding));
    for (const Eye eye : both_eyes) {
        const EyePath& path = in_glass.path(eye);
        CHECK(
            near(lens_in(path).axis_position, lens_in(at_glass.path(eye)).axis_position, rounding));
        REQUIRE(path.steps.size() == at_glass.path(eye).steps.size());
        for (std::size_t i = 0; i < path.steps.size(); ++i) {
            CHECK(near(path.steps[i].length, at_glass.path(eye).steps[i].length, rounding));
        }
    }
    const Train before = train_of(with_lens(-30, {{"Diagonal", PrismDiagonal{}, {}}}));
    CHECK(near(before.lens_rooms.front().placed(), -9.5, rounding));
    CHECK(near(before.lens_rooms.front().inside(), 20.5, rounding));
}

TEST_CASE(
    "where the place of the first glass is not stated, it is told how much deeper it may be") {
    Setup setup = with_lens(20);
    the<SplitterHead>(setup).entry_air.reset();
    the<SplitterHead>(setup).stated_light_path = Millimetres{98};
    const LensRoom room = train_of(setup).lens_rooms.front();
    // As in parts/splitter_head_inside_test.cpp: 9.746 mm before the cube, 25.630 at most.
    CHECK(near(room.placed(), 9.746, 1e-3));
    CHECK(near(room.spare, 25.630 - 9.746, 1e-3));
}
