// Two setups side by side: changes of known size, by geometry and by hand.
#include <algorithm>

#include "parts/mirror_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/comparison/comparison.hpp"
#include "study/comparison/part_differences.hpp"
#include "study/findings/report.hpp"
#include "study/results/results.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

std::vector<ComparedResult> compared(const Setup& here, const Setup& there) {
    const auto report = [](const Setup& setup) {
        return make_report(setup, setup.chosen, {96}).value();
    };
    return compare_reports(report(here), report(there));
}

const ComparedResult& result_named(const std::vector<ComparedResult>& all, std::string_view key) {
    const auto found = std::find_if(
        all.begin(), all.end(), [&](const ComparedResult& one) { return one.info->key == key; });
    REQUIRE(found != all.end());
    return *found;
}

}  // namespace

TEST_CASE("a setup is as good as itself") {
    const Setup setup = wide_setup();
    for (const ComparedResult& one : compared(setup, setup)) {
        CAPTURE(one.info->key);
        CHECK_FALSE(one.differs);
        CHECK_FALSE(one.better.has_value());
    }
    CHECK(part_differences(setup, setup).empty());
}

TEST_CASE("back focus that is 7 mm shorter leaves 7 mm less travel inward") {
    Setup here = wide_setup();
    the<Refractor>(here).back_focus = {100};  // too short: the margin is the shortfall
    Setup there = here;
    the<Refractor>(there).back_focus.value -= 7;
    const auto all = compared(here, there);
    const ComparedResult& margin = result_named(all, "focus_margin");
    CHECK(near(margin.there - margin.here, -7.0, 1e-9));
    CHECK(margin.differs);
    CHECK(margin.better == Side::here);
    const ComparedResult& power = result_named(all, "magnification");
    CHECK_FALSE(power.better.has_value());

    const auto parts = part_differences(here, there);
    REQUIRE(parts.size() == 1);
    REQUIRE(parts[0].field.has_value());
    CHECK(parts[0].field->key == "back_focus_mm");
    CHECK(parts[0].value_here == "100 mm");
    CHECK(parts[0].value_there == "93 mm");
}

TEST_CASE("of two margins that both suffice neither is better; of two loads the lighter is") {
    Setup here = wide_setup();
    the<Refractor>(here).back_focus = {180};
    Setup there = here;
    the<Refractor>(there).back_focus = {183};
    const auto margins = compared(here, there);
    const ComparedResult& margin = result_named(margins, "focus_margin");
    REQUIRE(margin.here >= thin_margin.value);
    REQUIRE(margin.there >= thin_margin.value);
    CHECK(margin.differs);
    CHECK_FALSE(margin.better.has_value());

    the<SplitterHead>(here).mount.mass = Grams{600};
    the<SplitterHead>(there).mount.mass = Grams{450};
    const auto loads = compared(here, there);
    const ComparedResult& load = result_named(loads, "load");
    CHECK(near(load.here - load.there, 150.0, 1e-9));
    CHECK(load.better == Side::there);
}

TEST_CASE("parts that only one has, and a part in place of another, are told as such") {
    const Setup here = wide_setup({{"Diagonal", MirrorDiagonal{}, {}}});
    const Setup there = wide_setup({{"Spacer", Spacer{}, {}}});
    const auto parts = part_differences(here, there);
    const auto has = [&](const std::string& name_here, const std::string& name_there) {
        return std::any_of(parts.begin(), parts.end(), [&](const PartDifference& one) {
            return !one.field && one.value_here == name_here && one.value_there == name_there;
        });
    };
    CHECK(has("Diagonal", ""));
    CHECK(has("", "Spacer"));
}
