#include "parts/eyepiece_pair.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "study/focus/other_uses.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

std::vector<OtherUse> uses_of(const Setup& setup) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    auto uses = other_uses(setup, setup.chosen, *budget);
    REQUIRE(uses.has_value());
    return *std::move(uses);
}

const OtherUse& the_use(const std::vector<OtherUse>& uses, Use use) {
    for (const OtherUse& one : uses)
        if (one.use == use) return one;
    throw std::logic_error("no such use");
}

// Back focus 150 behind a diagonal of 35 and a head of 110, as their makers state them: 5 mm out.
Setup five_out() {
    MirrorDiagonal diagonal;
    diagonal.stated_light_path = Millimetres{35};
    Setup setup = plain_setup({{"Diagonal", diagonal, {}}});
    the<Refractor>(setup).back_focus = {150};
    the<SplitterHead>(setup).stated_light_path = Millimetres{110};
    the<EyepiecePair>(setup).field_stop_depth = {0};
    return setup;
}

}  // namespace

TEST_CASE(
    "without the head focus moves out by the head's light path, without the diagonal by its own") {
    Setup setup = five_out();
    const auto uses = uses_of(setup);
    REQUIRE(uses.size() == 2);  // there is no shifter to take out
    const OtherUse& one = the_use(uses, Use::one_eye);
    CHECK(near(one.drawtube, 115, rounding));  // 150 - 35
    CHECK(near(one.change, 110, rounding));
    CHECK_FALSE(one.reaches);
    CHECK_FALSE(one.shortfall_is_inward);
    CHECK(near(one.shortfall.value, 35, rounding));  // of 80 mm travel
    const OtherUse& straight = the_use(uses, Use::straight_through);
    CHECK(near(straight.drawtube, 40, rounding));  // 150 - 110
    CHECK(straight.reaches);
}

TEST_CASE("one eye focuses for itself: the left eye's dioptres count in full") {
    Setup setup = five_out();
    the<Observer>(setup).left = prescribed(-4);
    the<Observer>(setup).right = prescribed(0);
    the<EyepiecePair>(setup).focal_length = {25};
    // f^2 / 1000 per dioptre (W. J. Smith, Modern Optical Engineering, 4th ed., p. 290): 2.5 mm for -4 D.
    CHECK(near(the_use(uses_of(setup), Use::one_eye).drawtube, 115 - 2.5, rounding));
}

TEST_CASE("one eye without the head has no nose that holds a shifter: the lens goes with it") {
    // Back focus 120 and nothing left in the chain: the eyepiece's stop, 5 mm before its shoulder, wants the drawtube at
    // 120 + 5.
    Setup setup = plain_setup({bare_lens(-66, 2)});
    the<Refractor>(setup).back_focus = {120};
    the<EyepiecePair>(setup).field_stop_depth = {5};
    const OtherUse use = the_use(uses_of(setup), Use::one_eye);
    CHECK(use.removed.size() == 2);
    CHECK(near(use.drawtube, 125, rounding));
    // A cell with a length of its own stays in the chain.
    Setup tube = setup;
    the<Shifter>(tube).length = {20};
    CHECK(the_use(uses_of(tube), Use::one_eye).removed.size() == 1);
}

TEST_CASE("taking the shifter out takes its gain away") {
    Setup setup = plain_setup({bare_lens(-80, 0)});
    the<Refractor>(setup).back_focus = {150};
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const OtherUse use = the_use(uses_of(setup), Use::without_shifter);
    CHECK(near(use.change, -budget->shifters.front().gain, rounding));
}

TEST_CASE("a use agrees with a setup rebuilt without that part") {
    Setup setup = five_out();
    setup.parts.insert(setup.parts.begin() + 3, bare_lens(-120, 3));
    setup = with_valid_choice(std::move(setup));
    const Millimetres straight = the_use(uses_of(setup), Use::straight_through).drawtube;
    const Millimetres unshifted = the_use(uses_of(setup), Use::without_shifter).drawtube;
    Setup without_diagonal = setup;
    without_diagonal.parts.erase(without_diagonal.parts.begin() + 2);
    without_diagonal = with_valid_choice(std::move(without_diagonal));
    Setup without_lens = setup;
    without_lens.parts.erase(without_lens.parts.begin() + 3);
    without_lens = with_valid_choice(std::move(without_lens));
    CHECK(near(straight,
               focus_budget(without_diagonal, without_diagonal.chosen)->wanted_drawtube.value,
               rounding));
    CHECK(near(unshifted, focus_budget(without_lens, without_lens.chosen)->wanted_drawtube.value,
               rounding));
}
