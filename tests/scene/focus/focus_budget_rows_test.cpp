#include <algorithm>
#include <vector>

#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("the waterfall starts at the back focus, every bar where the last one ended, and ends at "
          "what is left") {
    const FocusBudgetRows rows = focus_budget_rows(report_of(worked_budget()));
    REQUIRE(rows.bars.size() == 5);
    const std::vector<double> ends{116, 115, 80, -30, -30};
    for (std::size_t i = 0; i < rows.bars.size(); ++i)
        CHECK(near(rows.bars[i].to, ends[i], 1e-9));
    for (std::size_t i = 1; i + 1 < rows.bars.size(); ++i)
        CHECK(near(rows.bars[i].from, ends[i - 1], 1e-9));
    CHECK(rows.bars.front().from == 0);
    CHECK(rows.bars.back().from == 0);
    CHECK(rows.bars[0].value == "116.0");
    CHECK(rows.bars[2].value == "-35.0");
    CHECK(rows.bars.back().label == "Short by");
    CHECK(rows.bars.back().value == "30.0");
    CHECK(rows.bars.back().role == ColourRole::shortfall);
    CHECK(near(rows.low, -30, 1e-9));
    CHECK(near(rows.high, 116, 1e-9));
}

TEST_CASE("a part's bar adds up all that the budget books for it, and the telescope's is its back "
          "focus") {
    Setup setup = worked_budget();
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.mechanism = Mechanism::sliding;  // 50 to 74 mm, stated for 62: half a mm per mm off it
    setup.parts[6].body.get<Observer>().pupil_distance = {70};
    const std::vector<BudgetBar> bars = budget_by_part(report_of(setup, 16));
    const auto value_of = [&](std::size_t part) {
        const auto bar = std::ranges::find(bars, part, &BudgetBar::part);
        REQUIRE(bar != bars.end());
        return bar->value;
    };
    CHECK(std::ranges::count(bars, 4, &BudgetBar::part) == 1);
    CHECK(value_of(0) == "116.0");
    CHECK(value_of(3) == "-35.0");
    CHECK(value_of(4) == "-114.0");
}

TEST_CASE("a drawtube that cannot follow is shown with its wanted place beyond the scale") {
    const TravelScale scale = focus_budget_rows(report_of(worked_budget())).travel;
    CHECK_FALSE(scale.reaches);
    CHECK(scale.role == ColourRole::shortfall);
    CHECK(near(scale.wanted, -30, 1e-9));
    CHECK(scale.present == 0);
    CHECK(scale.low < -30);
    CHECK(scale.high > scale.travel);
    CHECK(scale.margin_in == "30.0 mm too far in");
    CHECK(scale.margin_out == "110.0 mm left outward");
    CHECK(scale.sentence == "Focus lies 30.0 mm farther in than the drawtube goes.");
}

TEST_CASE("a setup in focus tells both margins, a held drawtube where focus is") {
    Setup setup = worked_budget();
    setup.parts[0].body.get<Refractor>().back_focus = {
        161};  // 45 mm more: 15 mm of travel are used
    TravelScale scale = focus_budget_rows(report_of(setup)).travel;
    CHECK(scale.reaches);
    CHECK(scale.role == ColourRole::good);
    CHECK(scale.margin_in == "15.0 mm left inward");
    CHECK(scale.margin_out == "65.0 mm left outward");
    CHECK(scale.sentence == "In focus with the drawtube 15.0 mm out of 80 mm.");
    setup.parts[1].body.get<Focuser>().held_at = Millimetres{40};
    scale = focus_budget_rows(report_of(setup)).travel;
    CHECK(scale.is_held);
    CHECK(scale.present == 40);
    CHECK(near(scale.wanted, 15, 1e-9));
    CHECK(scale.sentence == "The drawtube is held 40.0 mm out; focus is at 15.0 mm.");
}

TEST_CASE("what a shifter gives back is a bar upwards in the colour of what is good") {
    const FocusBudgetRows rows = focus_budget_rows(report_of(cured_setup()));
    const auto found = std::find_if(rows.bars.begin(), rows.bars.end(), [](const BudgetBar& bar) {
        return bar.entry == BudgetEntry::gives_back;
    });
    REQUIRE(found != rows.bars.end());
    CHECK(found->to > found->from);
    CHECK(found->value.front() == '+');
    CHECK(found->role == ColourRole::good);
    CHECK(rows.bars.back().role == ColourRole::good);
}
