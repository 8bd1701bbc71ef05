#include <algorithm>
#include <set>

#include "document/tour_lit.hpp"
#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Tour tour_named(const std::string& name, const Setup& setup) {
    const auto tours = built_in_tours(setup, report_of(setup));
    const auto found =
        std::find_if(tours.begin(), tours.end(), [&](const Tour& one) { return one.name == name; });
    REQUIRE(found != tours.end());
    return *found;
}

bool tells(const Tour& tour, const std::string& words) {
    return std::any_of(tour.steps.begin(), tour.steps.end(), [&](const TourStep& step) {
        return step.caption.find(words) != std::string::npos;
    });
}

}  // namespace

TEST_CASE("every built-in caption can be filled on any setup and is short enough to be read") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Report report = report_of(setup);
        const auto quotes = tour_quotes(setup, report);
        std::set<std::string> names;
        for (const Tour& tour : built_in_tours(setup, report)) {
            CHECK(names.insert(tour.name).second);
            CHECK_FALSE(tour.steps.empty());
            for (const TourStep& step : tour.steps) {
                const auto caption = filled_caption(step.caption, quotes);
                REQUIRE(caption);
                // Two lines of 90 letters: common practice for captions, no source; three at the most here.
                CHECK(caption->size() <= 270);
            }
        }
    }
}

TEST_CASE("the tour on focus tells a setup that reaches nothing of a failure") {
    const std::string name = "why-it-will-not-focus";
    CHECK(tells(tour_named(name, short_setup()), "{focus.shortfall}"));
    CHECK_FALSE(tells(tour_named(name, cured_setup()), "{focus.shortfall}"));
    CHECK(tells(tour_named(name, cured_setup()), "{focus.margin_in}"));
    // The room is asked whether it reaches: the title must not tell.
    CHECK(tour_named(name, cured_setup()).title == tour_named(name, short_setup()).title);
}

TEST_CASE("a drawtube too far in is told to need a spacer, not to be out of reach inward") {
    Setup setup = short_setup();
    setup.parts[0].body.get<Refractor>().back_focus = {400};  // far beyond chain and travel
    REQUIRE_FALSE(report_of(setup).budget.reaches);
    CHECK(tells(tour_named("why-it-will-not-focus", setup), "a spacer of that length"));
}

TEST_CASE("a setup without a shifter is given one for the tour, and that is said") {
    for (const Setup& setup : {short_setup(), cured_setup()}) {
        const bool has_one = find_part<Shifter>(setup) != nullptr;
        const Tour tour = tour_named("what-a-shifter-does", setup);
        CHECK(tells(tour, "is put in for this tour") == !has_one);
        for (const TourStep& step : tour.steps) {
            REQUIRE(step.instead);
            CHECK(find_part<Shifter>(step.instead->setup) != nullptr);
        }
    }
}

TEST_CASE(
    "a lens farther from the image magnifies more: each step of its tour has a larger factor") {
    // Factor 1 + d / |f| of a thin lens (the thin-lens equation), whatever else moves.
    const Tour tour = tour_named("what-a-shifter-does", cured_setup());
    double before = 1;
    int steps = 0;
    for (const TourStep& step : tour.steps) {
        if (step.caption.find("farther from the image") == std::string::npos) continue;
        const Setup& setup = step.instead->setup;
        const auto budget = solved_focus(setup, setup.chosen);
        REQUIRE(budget);
        const ShifterAtWork& works = budget->shifters.front();
        const auto& lens = setup.parts[works.part].body.get<Shifter>();
        CHECK(works.factor > before);
        CHECK(near(works.factor, 1 - works.image_distance / lens.lens_focal_length(), 1e-9));
        before = works.factor;
        ++steps;
    }
    CHECK(steps >= 1);
}

TEST_CASE("a setup out of focus is shown a cure that brings the image back") {
    const Tour tour = tour_named("why-it-will-not-focus", short_setup());
    const TourStep& last = tour.steps.back();
    REQUIRE(last.instead);
    CHECK(report_of(last.instead->setup).budget.reaches);
    CHECK(last.show.contains(TourShow::sight));
}

TEST_CASE("the edge is called dark where a rim takes light, and the rim is named") {
    CHECK(tells(tour_named("why-the-edge-goes-dark", clipping_setup()), "{edge.rim}"));
}

TEST_CASE("a moving mirror out of reach is not told of a drawtube") {
    Setup setup = short_setup();
    setup.parts[0] = Part{"Moving mirror", CassegrainMovingMirror{}, {}, {}};
    for (const double length : {0.0, 900.0}) {  // at hand, and far beyond any primary's travel
        setup.parts[2].body.get<Spacer>().length = {length};
        const Report report = report_of(setup);
        REQUIRE(report.budget.primary);
        REQUIRE(report.budget.reaches == (length == 0));
        const Tour tour = tour_named("why-it-will-not-focus", setup);
        CHECK(tells(tour, "moving its main mirror"));
        CHECK_FALSE(tells(tour, "drawtube"));
        CHECK_FALSE(tells(tour, "focuser at"));
        CHECK(tells(tour, "{focus.shortfall}") == !report.budget.reaches);
    }
}

TEST_CASE("every built-in tour lights what it tells of, in words that mean a part of that setup") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        for (const Tour& tour : built_in_tours(setup, report_of(setup))) {
            CAPTURE(tour.name);
            CHECK_FALSE(tours_objection({&tour, 1}));
            bool lights = false;
            for (const TourStep& step : tour.steps) {
                lights = lights || !step.lit.empty();
                const Setup& told = told_setup(step, setup);
                for (const std::string& word : step.lit) {
                    CAPTURE(word);
                    CHECK_FALSE(lit_part_objection(word, told));
                    // No word is idle: what is lit by it alone is less than everything.
                    const auto lit = lit_parts(std::vector{word}, told);
                    CHECK(std::find(lit.begin(), lit.end(), false) != lit.end());
                }
            }
            CHECK(lights);
        }
    }
}
