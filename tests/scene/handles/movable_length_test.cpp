#include "parts/focuser.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "scene/handles/movable_length.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

template <class Kind>
std::size_t part_of_kind(const Setup& setup) {
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (setup.parts[i].body.is<Kind>()) return i;
    }
    FAIL("no such part");
    return 0;
}

Setup with_spacer_of(Setup setup, double length) {
    setup.parts[part_of_kind<Spacer>(setup)].body.get<Spacer>().length = {length};
    return setup;
}

}  // namespace

TEST_CASE("a length moves by halves, finely by twentieths, and stops at its ends with a word") {
    MovableLength length;
    length.value = 10;
    length.high = 20;
    length.low_word = "no shorter";
    length.high_word = "no longer";
    CHECK(moved_value(length, 1.7, Steps::halves) == 11.5);
    CHECK(near(moved_value(length, 1.23, Steps::fine), 11.25, rounding));
    CHECK(moved_value(length, 40, Steps::halves) == 20);
    CHECK(moved_value(length, -40, Steps::fine) == 0);
    CHECK(told_value(length, 20) == "20.0 mm: no longer");
    CHECK(told_value(length, 0) == "0.0 mm: no shorter");
    CHECK(told_value(length, 12.25) == "12.25 mm");
    length.landmark = 13.37;
    length.landmark_word = "in focus";
    CHECK(moved_value(length, 3, Steps::halves) == 13.37);  // within 0.75 mm
    CHECK(moved_value(length, 4.2, Steps::halves) == 14);
    CHECK(near(moved_value(length, 3, Steps::fine), 13, rounding));
    CHECK(told_value(length, 13.37) == "13.37 mm, in focus");
}

TEST_CASE(
    "while held finely a length follows by a tenth, and the change between the two moves nothing") {
    MovableLength length;
    length.value = 10;
    length.high = 50;
    HeldLength held(length, Steps::halves);
    CHECK(held.value_after(6, Steps::halves) == 16);
    CHECK(near(held.value_after(6, Steps::fine), 16, rounding));
    CHECK(near(held.value_after(9, Steps::fine), 16.3, rounding));
    CHECK(held.value_after(9, Steps::halves) == 16.5);
    CHECK(held.value_after(11, Steps::halves) == 18.5);
    // Beyond a stop the way back starts where the pointer left it.
    CHECK(held.value_after(100, Steps::halves) == 50);
    CHECK(held.value_after(11, Steps::halves) == 18.5);
}

TEST_CASE("the spacer's landmark is the length at which focus is just reached") {
    // Checked by the focus budget itself: with that length the drawtube stands fully in.
    Setup setup = with_spacer_of(short_setup(), 12);
    setup.parts[0].body.get<Refractor>().back_focus = {190};
    const auto spacer = part_of_kind<Spacer>(setup);
    const auto length = movable_length(setup, report_of(setup, 16), spacer);
    REQUIRE(length.has_value());
    REQUIRE(length->landmark.has_value());
    CHECK(*length->landmark > 12);
    const Report longest = report_of(with_spacer_of(setup, *length->landmark), 16);
    CHECK(near(longest.budget.wanted_drawtube.value, 0, 1e-6));
    // Held: the length that brings the image to where the drawtube stands.
    setup.parts[part_of_kind<Focuser>(setup)].body.get<Focuser>().held_at = {7};
    const auto held = movable_length(setup, report_of(setup, 16), spacer);
    const Report focused = report_of(with_spacer_of(setup, held->landmark.value()), 16);
    CHECK(near(focused.budget.wanted_drawtube.value, 7, 1e-6));
    // Behind a lens the one does not follow from the other mm by mm.
    Setup behind = cured_setup();
    behind.parts.insert(behind.parts.begin() + 5, Part{"Extension", Spacer{}, {}, {}});
    const auto after_lens =
        movable_length(with_valid_choice(behind), report_of(with_valid_choice(behind), 16), 5);
    REQUIRE(after_lens.has_value());
    CHECK_FALSE(after_lens->landmark.has_value());
}

TEST_CASE("a lens moves up to the glass on either side, and the knob says at which face it is") {
    Setup setup = cured_setup();
    const auto lens = part_of_kind<Shifter>(setup);
    // 14 mm of usual air before the cube; 22 - 12.5 = 9.5 mm of air behind the diagonal's prism.
    const auto length = movable_length(setup, report_of(setup, 16), lens);
    REQUIRE(length.has_value());
    CHECK(near(length->high, 14, 1e-9));
    CHECK(near(length->low, -9.5, 1e-9));
    CHECK(told_value(*length, moved_value(*length, 60, Steps::halves))
          == "14.0 mm: at the cube entry face of Splitter head");
    CHECK(told_value(*length, moved_value(*length, -60, Steps::fine))
          == "-9.5 mm: at the prism exit face of Prism diagonal");
    // As a file may say it: from there the way back leads.
    setup.parts[lens].body.get<Shifter>().lens_offset = {60};
    const auto in_glass = movable_length(setup, report_of(setup, 16), lens);
    REQUIRE(in_glass.has_value());
    CHECK(near(in_glass->value, 14, 1e-9));
}
