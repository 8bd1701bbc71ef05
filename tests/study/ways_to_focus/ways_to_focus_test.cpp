#include <algorithm>

#include "parts/focuser.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

// The worked budget of the trade (common practice, no source): back focus 116, adapter 1, diagonal 35, head 110:
// 30 mm short.
Setup short_by_30() {
    Spacer adapter;
    adapter.length = Millimetres{1};
    PrismDiagonal diagonal;
    diagonal.stated_light_path = Millimetres{35};
    Setup setup = plain_setup({{"Adapter", adapter, {}}, {"Diagonal", diagonal, {}}});
    the<Refractor>(setup).back_focus = Millimetres{116};
    the<SplitterHead>(setup).stated_light_path = Millimetres{110};
    the<Focuser>(setup).travel = Millimetres{80};
    return setup;
}

std::vector<WayToFocus> ways_of(const Setup& setup) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    return ways_to_focus(setup, setup.chosen, *budget);
}

const WayToFocus& way_named(const std::vector<WayToFocus>& ways, const std::string& id) {
    const auto found =
        std::find_if(ways.begin(), ways.end(), [&](const WayToFocus& way) { return way.id == id; });
    REQUIRE(found != ways.end());
    return *found;
}

bool has_way(const std::vector<WayToFocus>& ways, const std::string& id) {
    return std::any_of(ways.begin(), ways.end(),
                       [&](const WayToFocus& way) { return way.id == id; });
}

}  // namespace

TEST_CASE("leaving the diagonal out gives back just its light path") {
    const auto ways = ways_of(short_by_30());
    const WayToFocus& way = way_named(ways, "straight_through");
    CHECK(near(way.gained.value, 35, rounding));
    CHECK(near(way.margin_in.value, 5, rounding));
    CHECK(way.reaches);
    CHECK(near(way.magnification_ratio, 1, rounding));
    CHECK(way.setup.parts.size() == short_by_30().parts.size() - 1);
    CHECK_FALSE(order_fault(way.setup).has_value());
}

TEST_CASE("a tube shortened by x gives back x") {
    const auto ways = ways_of(short_by_30());
    const WayToFocus& way = way_named(ways, "shorter_tube");
    CHECK(near(way.gained.value, 35, rounding));  // 30 short and 5 to spare
    CHECK(way.reversibility == Reversibility::permanent);
}

TEST_CASE("a tube is not shortened by more than a fifth of its focal length") {
    // Common practice, no source: beyond it the light cone no longer passes rings and focuser.
    Setup setup = short_by_30();
    auto& telescope = the<Refractor>(setup);
    telescope.back_focus = telescope.back_focus - 0.2 * telescope.focal_length;
    CHECK_FALSE(has_way(ways_of(setup), "shorter_tube"));
}

TEST_CASE("behind a reducer the first thing offered is to leave it out") {
    // Thin lens, 1/s' = 1/s + 1/f: a positive lens draws the image in, so without it there is more light path.
    Shifter reducer;
    reducer.given = ShifterGiven::focal_length;
    reducer.focal_length = {400};
    reducer.lens_offset = {0};
    Setup setup = short_by_30();
    setup.parts.insert(setup.parts.begin() + 2, {"Reducer", reducer, {}});
    setup = with_valid_choice(std::move(setup));
    const double before = focus_budget(setup, setup.chosen)->margin_in.value;
    const auto ways = ways_of(setup);
    const WayToFocus& without = way_named(ways, "reducer_left_out");
    const WayToFocus& weaker = way_named(ways, "weaker_reducer");
    CHECK(near(before + without.gained.value, -30, rounding));  // the train without it, 30 mm short
    CHECK(without.magnification_ratio > weaker.magnification_ratio);
    CHECK(weaker.magnification_ratio > 1);
    CHECK(without.gained.value > weaker.gained.value);
    CHECK(weaker.gained > Millimetres{});
    CHECK(without.setup == with_valid_choice(short_by_30()));
}

TEST_CASE("the offered shifter obeys g = d - d/M and magnifies as it says") {
    // Thin-lens equation: W. J. Smith, Modern Optical Engineering, 4th ed., Eq. 2.4 and M = d / s.
    for (const std::string id : {"shifter_in_nose", "shifter_before_diagonal"}) {
        CAPTURE(id);
        const auto ways = ways_of(short_by_30());
        const WayToFocus& way = way_named(ways, id);
        const auto after = focus_budget(way.setup, way.setup.chosen);
        REQUIRE(after.has_value());
        REQUIRE(after->shifters.size() == 1);
        const double d = after->shifters[0].image_distance.value;
        const double M = way.magnification_ratio;
        CHECK(M > 1);
        CHECK(near(way.gained.value, d - d / M, 1e-6));  // of a lens solved to rounding
        CHECK(way.gained.value >= 35 - 1e-6);
        CHECK(way.gained.value < 35 + d / M * 0.06);  // no stronger than the next step of 0.05
        CHECK(way.margin_in.value >= thin_margin.value - 1e-6);
    }
}

TEST_CASE("real rays agree that the ways which are said to reach do reach") {
    const Setup setup = short_by_30();
    int reaching = 0;
    for (const WayToFocus& way : ways_of(setup)) {
        if (!way.reaches) continue;
        CAPTURE(way.what);
        ++reaching;
        const auto report = make_report(way.setup, way.setup.chosen, {64});
        REQUIRE(report.has_value());
        // Best focus of real rays differs from the paraxial one by the glass's spherical aberration only,
        // below 0.15 mm for 100 mm of glass at f/5 (Smith, sec. 7.8: LSA 0.19 mm at the rim).
        for (const RealFocus& focus : report->real_focus)
            CHECK(abs(focus.best) < Millimetres{0.15});
    }
    CHECK(reaching >= 4);
}

TEST_CASE("ways that suffice come first and none is offered to a setup that is well") {
    const auto ways = ways_of(short_by_30());
    CHECK(std::is_sorted(ways.begin(), ways.end(), [](const WayToFocus& a, const WayToFocus& b) {
        return a.reaches && !b.reaches;
    }));
    for (const WayToFocus& way : ways)
        CHECK_FALSE(way.cost.empty());
    Setup well = short_by_30();
    the<Refractor>(well).back_focus = Millimetres{170};
    CHECK(ways_of(well).empty());
}

TEST_CASE(
    "a long diagonal may be exchanged for a short one and a long adapter for a thin coupling") {
    Setup setup = short_by_30();
    the<PrismDiagonal>(setup).stated_light_path = Millimetres{80};
    the<Spacer>(setup).length = Millimetres{20};
    const auto ways = ways_of(setup);
    CHECK(near(way_named(ways, "shorter_diagonal").gained.value, 80 - 38, rounding));
    CHECK(near(way_named(ways, "low_profile_adapter").gained.value, 20 - 2, rounding));
    CHECK_FALSE(way_named(ways, "low_profile_adapter").reaches);
}

TEST_CASE("a shifter behind the diagonal may move to its other side; no second one is offered") {
    Setup setup = short_by_30();
    the<Refractor>(setup).back_focus = Millimetres{80};
    const auto chain_end = static_cast<long>(index_of<SplitterHead>(setup));
    setup.parts.insert(setup.parts.begin() + chain_end, bare_lens(-100, 5));
    setup = with_valid_choice(std::move(setup));
    const auto before = focus_budget(setup, setup.chosen);
    REQUIRE(before.has_value());
    const double d = before->shifters.at(0).image_distance.value;
    const auto ways = ways_of(setup);
    // M = 1 + d / |f| before, and the diagonal's 35 mm more behind the lens afterwards.
    CHECK(near(way_named(ways, "shifter_moved_forward").magnification_ratio,
               (100 + d + 35) / (100 + d), rounding));
    CHECK_FALSE(has_way(ways, "shifter_in_nose"));
}

TEST_CASE("an image too far out asks for an extension of what is missing and 5 mm to spare") {
    Setup setup = short_by_30();
    the<Refractor>(setup).back_focus =
        Millimetres{116 + 30 + 92};  // wants the drawtube at 92 of 80 mm
    const auto ways = ways_of(setup);
    const WayToFocus& way = way_named(ways, "extension");
    CHECK(near(way.gained.value, -17, rounding));
    CHECK(near(way.margin_out.value, 5, rounding));
    CHECK_FALSE(has_way(ways, "straight_through"));
}
