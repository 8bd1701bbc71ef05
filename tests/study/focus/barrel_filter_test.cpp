// A filter in an eyepiece's barrel: a plane plate of 2 mm N-BK7, n = 1.51872 at the e line (its maker's data sheet), moves
// an image outward by t (1 - 1/n) = 0.6831 mm (W. J. Smith, Modern Optical Engineering, plane parallel plates).
#include <algorithm>

#include "study/cures/cure_search.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr double moved = 2 * (1 - 1 / 1.51872);
constexpr double last_digit = 1e-5;  // of the index

FocusBudget filter_budget(const Setup& setup) {
    auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    return *std::move(budget);
}

const Finding* filter_finding(const Report& report, const std::string& id) {
    const auto found = std::find_if(report.findings.begin(), report.findings.end(),
                                    [&](const Finding& one) { return one.id == id; });
    return found == report.findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("filters in both barrels let the drawtube out by what their glass moves the image") {
    Setup setup = wide_setup();
    const double bare = filter_budget(setup).wanted_drawtube.value;
    auto& pair = the<EyepiecePair>(setup);
    pair.left_filter = pair.right_filter = 40;
    const FocusBudget budget = filter_budget(setup);
    CHECK(near(budget.wanted_drawtube.value - bare, moved, last_digit));
    CHECK(near(budget.arm_difference.value, 0, rounding));
    CHECK(near(budget.rows.back().left.value, budget.wanted_drawtube.value, 1e-9));
    the<EyepiecePair>(setup).filter_glass = Millimetres{3};
    CHECK(near(filter_budget(setup).wanted_drawtube.value - bare, 1.5 * moved, 2 * last_digit));
}

TEST_CASE("a filter in one barrel moves that eye's image alone: the drawtube serves the mean, the "
          "seats the rest") {
    for (const Eye eye : both_eyes) {
        Setup setup = wide_setup();
        const double bare = filter_budget(setup).wanted_drawtube.value;
        auto& pair = the<EyepiecePair>(setup);
        (eye == Eye::left ? pair.left_filter : pair.right_filter) = 40;
        const FocusBudget budget = filter_budget(setup);
        CHECK(near(budget.wanted_drawtube.value - bare, moved / 2, last_digit));
        CHECK(near(budget.rows.back().left.value, budget.wanted_drawtube.value, 1e-9));
        const auto train = focused_train(setup, setup.chosen, budget);
        REQUIRE(train.has_value());
        for (const Eye one : both_eyes) {
            // The filtered eye's image falls farther out, and its eyepiece follows it.
            CHECK(
                near(train->path(one).seat_shift, one == eye ? moved / 2 : -moved / 2, last_digit));
            CHECK(near(image_behind_stop(*train, one), 0, 1e-9));
        }
    }
}

TEST_CASE("rays through a filter in the barrel meet where its thickness sends them") {
    // Traced, not summed: against the same setup without it. f/7 adds less than 0.003 mm of spherical aberration.
    Setup setup = wide_setup();
    const auto focus = [](const Setup& one) {
        const Report report = make_report(one, one.chosen, {64}).value();
        return report.real_focus[0].near_axis.value - report.train.path(Eye::left).seat_shift
               - report.budget.drawtube.value;
    };
    const double bare = focus(setup);
    the<EyepiecePair>(setup).left_filter = 40;
    // Behind the stop, whose seat went out by half, with a drawtube that went out by half.
    CHECK(near(focus(setup) - bare, -moved, 0.004));
}

TEST_CASE("a filter in one barrel is told as such, and not as arms that differ") {
    Setup setup = wide_setup();
    the<EyepiecePair>(setup).left_filter = 40;
    const Report report = make_report(setup, setup.chosen, {64}).value();
    const Finding* told = filter_finding(report, "filter_in_one_barrel");
    REQUIRE(told != nullptr);
    CHECK(told->severity == Severity::note);
    CHECK(told->sentence.find("left eyepiece moves that eye's image 0.68 mm out")
          != std::string::npos);
    CHECK(filter_finding(report, "arms_unequal") == nullptr);
}

TEST_CASE("a pair with filters in its barrels is not parfocal with its like, and a ring of 0.7 mm "
          "makes it so") {
    Setup setup = wide_setup();
    Part filtered = setup.parts[index_of<EyepiecePair>(setup)];
    filtered.name = "Filtered";
    filtered.body.get<EyepiecePair>().left_filter = 40;
    filtered.body.get<EyepiecePair>().right_filter = 40;
    setup.parts.insert(setup.parts.begin() + 4, filtered);
    setup = with_valid_choice(std::move(setup));
    Report report = make_report(setup, setup.chosen, {64}).value();
    add_cures(setup, report);
    const Finding* apart = filter_finding(report, "not_parfocal");
    REQUIRE(apart != nullptr);
    REQUIRE_FALSE(apart->cures.empty());
    CHECK(apart->cures.front().what == "Put rings on the barrels: 0.7 mm on “Filtered”");
}
