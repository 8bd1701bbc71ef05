// Cures against the setup's own headline, each made a setup of its own and studied as any other; and that none is
// absurd where a reducer takes the light path.
#include <algorithm>
#include <cmath>

#include "parts/newtonian.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "study/cures/cure_search.hpp"
#include "support/near.hpp"
#include "support/random_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr ClippingEffort ray_count{96};

std::ptrdiff_t count_graded(const Report& report, Severity severity) {
    return std::count_if(report.findings.begin(), report.findings.end(),
                         [&](const Finding& one) { return one.severity == severity; });
}

double margin_left(const Report& report) {
    return std::min(report.budget.margin_in, report.budget.margin_out).value;
}

const Finding* finding_told(const Report& report, const std::string& id) {
    const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                    [&](const Finding& one) { return one.id == id; });
    return found == report.findings.end() ? nullptr : &*found;
}

void check_headline(const Report& before, const Report& after) {
    const auto gravest = [](const Report& report) {
        return std::pair(count_graded(report, Severity::fails),
                         count_graded(report, Severity::poor));
    };
    CHECK(gravest(after) <= gravest(before));
    if (margin_left(before) < thin_margin.value)
        CHECK(margin_left(after) >= margin_left(before) - 0.051);  // a tenth of a mm is told
}

// What an owner could do: no part turns into something that contradicts itself, no tube is cut by more than a fifth.
void check_possible(const Setup& before, const Setup& after) {
    CHECK_FALSE(order_fault(after).has_value());
    for (const Part& part : after.parts)
        CHECK_FALSE(contradiction(part.body).has_value());
    if (const auto* tube = before.parts.front().body.as<Refractor>()) {
        const auto& cut = after.parts.front().body.get<Refractor>();
        CHECK(cut.back_focus - tube->back_focus <= 0.2 * tube->focal_length);
    }
    if (const auto* tube = before.parts.front().body.as<Newtonian>()) {
        const auto& moved = after.parts.front().body.get<Newtonian>();
        CHECK(moved.primary_moved_up - tube->primary_moved_up <= 0.15 * tube->focal_length);
    }
}

Report report_with_cures(const Setup& setup) {
    Report report = make_report(setup, setup.chosen, ray_count).value();
    add_cures(setup, report);
    return report;
}

// 100 mm f/7 with a reducer of 400 mm before a prism diagonal, and room for its cell.
Setup with_reducer() {
    Shifter reducer;
    reducer.given = ShifterGiven::focal_length;
    reducer.focal_length = {400};
    reducer.lens_offset = {5};
    reducer.length = {15};
    reducer.clear_diameter = {45};
    Setup setup = wide_setup({{"Reducer", reducer, {}}});
    the<Refractor>(setup).back_focus = {125};
    return setup;
}

}  // namespace

TEST_CASE("no offered cure makes a setup worse in its own headline, and each stands as a setup of "
          "its own") {
    Random random(91);
    int tried = 0;
    for (int i = 0; i < 30; ++i) {
        CAPTURE(i);
        const Setup setup = random_setup(random);
        auto made = make_report(setup, setup.chosen, ray_count);
        if (!made) continue;
        Report& report = *made;
        add_cures(setup, report);
        for (const Finding& finding : report.findings) {
            for (const Cure& cure : finding.cures) {
                CAPTURE(finding.sentence);
                CAPTURE(cure.what);
                check_possible(setup, cure.setup);
                const auto after = make_report(cure.setup, cure.setup.chosen, ray_count);
                REQUIRE(after.has_value());
                check_headline(report, *after);
                const Finding* left = finding_told(*after, finding.id);
                const bool is_told_again = left != nullptr && left->sentence == finding.sentence;
                if (cure.removes) CHECK_FALSE(is_told_again);
                ++tried;
            }
        }
    }
    CHECK(tried > 30);
}

TEST_CASE("with a reducer in the train, to leave it out or exchange it is offered and no tube is "
          "cut for it") {
    const Setup setup = with_reducer();
    const Report report = report_with_cures(setup);
    const Finding* missed = finding_told(report, "focus_short");
    REQUIRE(missed != nullptr);
    const auto& ways = report.ways_to_focus;
    const auto way = [&](const std::string& id) {
        return std::find_if(ways.begin(), ways.end(),
                            [&](const WayToFocus& one) { return one.id == id; });
    };
    REQUIRE(way("reducer_left_out") != ways.end());
    // Thin lens, d from it to the field stop: M = 1 - d / f, and it takes d / M - d; its cell takes its own 15 mm.
    const ShifterAtWork& lens = report.budget.shifters.front();
    const double d = lens.image_distance.value;
    CHECK(near(way("reducer_left_out")->gained, d / (1 - d / 400) - d + 15, 1e-6));
    CHECK(way("shorter_tube") == ways.end());
    REQUIRE_FALSE(missed->cures.empty());
    for (const Cure& cure : missed->cures) {
        CAPTURE(cure.what);
        CHECK(cure.reversibility != Reversibility::permanent);
        CHECK(cure.what.find("pectacles") == std::string::npos);  // this observer wears none
        CHECK(cure.setup.parts != setup.parts);
    }
    const bool touches_reducer =
        std::any_of(missed->cures.begin(), missed->cures.end(), [](const Cure& cure) {
            return cure.what.find("“Reducer”") != std::string::npos;
        });
    CHECK(touches_reducer);
}

TEST_CASE("a lens in a reducer's place is as strong as thin-lens algebra asks for") {
    Setup setup = with_reducer();
    the<Refractor>(setup).back_focus = {90};  // without it, still short
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const auto ways = ways_to_focus(setup, setup.chosen, *budget);
    const auto way = std::find_if(ways.begin(), ways.end(), [](const WayToFocus& one) {
        return one.id == "shifter_for_reducer";
    });
    REQUIRE(way != ways.end());
    CHECK(way->reaches);
    CHECK(way->margin_in.value >= thin_margin.value - rounding);
    const auto lens = focus_budget(way->setup, way->setup.chosen)->shifters.front();
    CHECK(near(lens.gain, lens.image_distance - lens.image_distance / lens.factor, 1e-9));
    CHECK(lens.factor > 1);
}
