#include <cmath>

#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/target.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Report reported(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, {128});
    REQUIRE(report.has_value());
    return *std::move(report);
}

}  // namespace

TEST_CASE(
    "a report holds the train where the budget puts it and what each study says of that train") {
    Setup setup = plain_setup({{"Shifter", Shifter{}, {}}});
    const Report report = reported(setup);
    CHECK(report.train.drawtube == report.budget.drawtube);
    for (std::size_t side = 0; side < 2; ++side) {
        const Eye eye = both_eyes[side];
        const EyeClipping alone = clipping(report.train, eye, {128});
        CHECK(report.clipping_of(eye).eye == eye);
        REQUIRE(alone.points.size() == report.clipping[side].points.size());
        for (std::size_t i = 0; i < alone.points.size(); ++i) {
            CHECK(alone.points[i].relative == report.clipping[side].points[i].relative);
        }
        CHECK(report.real_focus[side].best == real_focus(report.train, eye).best);
        CHECK(report.image_behind_stop[side] == image_behind_stop(report.train, eye));
    }
}

TEST_CASE("the same setup gives the same report to the last bit, two threads or not") {
    const Setup setup = plain_setup({{"Diagonal", PrismDiagonal{}, {}}});
    const Report a = reported(setup);
    const Report b = reported(setup);
    CHECK(a.findings == b.findings);
    for (std::size_t side = 0; side < 2; ++side) {
        CHECK(a.clipping[side].edge_relative == b.clipping[side].edge_relative);
        CHECK(a.clipping[side].fully_illuminated_diameter
              == b.clipping[side].fully_illuminated_diameter);
        CHECK(a.real_focus[side].spot_rms == b.real_focus[side].spot_rms);
    }
}

TEST_CASE("the gap is what the image falls short of the field stop: nothing in focus, the "
          "shortfall out of reach") {
    Setup setup = wide_setup();
    CHECK(near(reported(setup).gap(Eye::left).value, 0, 1e-9));
    CHECK(near(reported(setup).gap(Eye::right).value, 0, 1e-9));
    the<Refractor>(setup).back_focus = {100};
    const Report short_of = reported(setup);
    CHECK(short_of.gap(Eye::left) > Millimetres{});
    CHECK(near(short_of.gap(Eye::left).value, short_of.budget.shortfall.value,
               1e-9));  // no lens between: one to one
}

TEST_CASE("a setup that cannot be a train has an error for its report") {
    Setup setup = plain_setup();
    the<Target>(setup).distance = Metres{0.5};
    CHECK_FALSE(make_report(setup, setup.chosen).has_value());
}
