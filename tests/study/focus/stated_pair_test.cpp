// A maker's factor and gain: against the thin-lens equation, worked by hand.
#include "study/focus/stated_pair.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

// A lens of 1.7x and 35 mm, its field stop that far behind it.
Setup pair_at_distance(double distance) {
    Shifter lens;
    lens.stated_factor = 1.7;
    lens.stated_gain = {35};
    lens.clear_diameter = {60};
    Setup setup = wide_setup({{"Shifter", lens, {}}});
    the<SplitterHead>(setup).stated_light_path = Millimetres{distance + lens.lens_offset.value};
    return setup;
}

StatedPairAtWork pair_at_work(const Setup& setup) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const auto pair = stated_pair_at_work(setup, *budget, index_of<Shifter>(setup));
    REQUIRE(pair.has_value());
    return *pair;
}

}  // namespace

TEST_CASE(
    "1.7x and 35 mm hold 85 mm before the field stop, and at 105.6 mm they are 1.87x and 49 mm") {
    // d = g M / (M - 1) = 85; |f| = d / (M - 1) = 121.43; M = 1 + 105.6 / |f| = 1.8696; g = d - d / M = 49.12.
    const StatedPairAtWork right = pair_at_work(pair_at_distance(85));
    CHECK(near(right.holds_at.value, 85, rounding));
    CHECK(near(right.factor_there, 1.7, 1e-9));
    CHECK(near(right.gain_there.value, 35, 1e-9));
    const StatedPairAtWork longer = pair_at_work(pair_at_distance(105.6));
    CHECK(near(longer.holds_at.value, 85, rounding));
    CHECK(near(longer.factor_there, 1.8696, 1e-4));
    CHECK(near(longer.gain_there.value, 49.12, 0.01));
    CHECK(to_words(longer)
          == "1.70× and 35.0 mm hold 85.0 mm before the field stop; here its lens is 105.6 mm "
             "before it, works at 1.87× and gives back 49.1 mm");
}

TEST_CASE("a lens that is known by its focal length has no stated pair") {
    const Setup setup = wide_setup({bare_lens(-120, 5)});
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    CHECK_FALSE(stated_pair_at_work(setup, *budget, index_of<Shifter>(setup)).has_value());
}
