#include <algorithm>
#include <cmath>

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/report.hpp"
#include "study/focus/uncertainty.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

#include <boost/math/distributions/normal.hpp>

using namespace beamfork;
using namespace test_setups;

namespace {

constexpr double slope_rounding = 1e-6;  // of differences over 0.002 mm

Uncertainty studied_whole(const Setup& setup) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    auto found = uncertainty(setup, setup.chosen, *budget);
    REQUIRE(found.has_value());
    return *std::move(found);
}

Setup exact_but_stated(Setup setup);

Uncertainty studied(const Setup& setup) { return studied_whole(exact_but_stated(setup)); }

// Focus 3 mm out of 80, by subtraction: back focus 113, a stated path of 110.
Setup three_out() {
    Setup setup = plain_setup();
    the<Refractor>(setup).back_focus = {113};
    the<SplitterHead>(setup).stated_light_path = Millimetres{110};
    the<EyepiecePair>(setup).field_stop_depth = {0};
    return setup;
}

void state(Setup& setup, std::size_t part, const char* key, double plus_minus, KnownBy by) {
    setup.parts[part].tolerances[key] = {plus_minus, by};
}

// Every other length known to a hair, so that what a test states is all there is to the sum.
constexpr double hair = 1e-9;
Setup exact_but_stated(Setup setup) {
    for (Part& part : setup.parts) {
        for (const FieldInfo& field : kind_of(part.body).fields) {
            if (assumed_tolerance(field))
                part.tolerances.insert({field.key, {hair, KnownBy::measured}});
        }
    }
    return setup;
}

}  // namespace

TEST_CASE("standard deviations: a rectangle of half width a has a / sqrt 3, a measured value has "
          "its own") {
    // JCGM 100:2008 (GUM), 4.3.7: variance a^2 / 3.
    CHECK(near(Tolerance{3, KnownBy::datasheet}.standard(), std::sqrt(3.0), 1e-12));
    CHECK(near(Tolerance{3, KnownBy::guessed}.standard(), std::sqrt(3.0), 1e-12));
    CHECK(near(Tolerance{3, KnownBy::measured}.standard(), 3, 0));
}

TEST_CASE("the normal distribution agrees with Boost's") {
    for (const double mean : {-6.0, -1.3, 0.0, 0.4, 2.0, 7.5}) {
        for (const double standard : {0.3, 1.0, 4.0}) {
            const boost::math::normal_distribution<> normal(mean, standard);
            CHECK(near(normal_below_zero(mean, standard), boost::math::cdf(normal, 0.0), 1e-12));
        }
    }
    CHECK(normal_below_zero(-1, 0) == 1);
    CHECK(normal_below_zero(1, 0) == 0);
}

TEST_CASE("independent lengths add as the root of the sum of squares (GUM, eq. 10)") {
    Setup setup = three_out();
    state(setup, 0, "back_focus_mm", 2, KnownBy::measured);
    state(setup, index_of<SplitterHead>(setup), "stated_light_path_mm", 1.5, KnownBy::measured);
    const Uncertainty found = studied(setup);
    CHECK(near(found.standard, 2.5, slope_rounding));  // 3-4-5, halved
    REQUIRE(found.contributions.size() >= 2);
    CHECK(found.contributions[0].key == "back_focus_mm");
    CHECK(near(found.contributions[0].sensitivity, 1, slope_rounding));
    CHECK(near(found.contributions[1].sensitivity, -1, slope_rounding));
    CHECK(near(found.contributions[0].share, 0.64, slope_rounding));
    CHECK(near(found.contributions[1].share, 0.36, slope_rounding));
    const boost::math::normal_distribution<> normal;
    CHECK(
        near(found.probability, boost::math::cdf(normal, 3 / 2.5), 1e-4));  // 77 mm outward is sure
    CHECK(near(found.margin, 3, rounding));
}

TEST_CASE("measuring the worst length to 0.2 mm gives the chance worked by hand") {
    Setup setup = three_out();
    state(setup, 0, "back_focus_mm", 2, KnownBy::measured);
    state(setup, index_of<SplitterHead>(setup), "stated_light_path_mm", 1.5, KnownBy::measured);
    const Uncertainty found = studied(setup);
    REQUIRE(found.better.has_value());
    const boost::math::normal_distribution<> normal;
    CHECK(
        near(found.better->probability, boost::math::cdf(normal, 3 / std::hypot(0.2, 1.5)), 1e-4));
}

TEST_CASE("an uncertain travel matters at the outer end alone") {
    Setup setup = three_out();
    the<Focuser>(setup).travel = {5};
    state(setup, 0, "back_focus_mm", 1, KnownBy::measured);
    state(setup, 1, "travel_mm", 2, KnownBy::measured);
    const Uncertainty found = studied(setup);
    const boost::math::normal_distribution<> normal;
    CHECK(near(found.too_far_in, boost::math::cdf(normal, -3.0), 1e-4));
    CHECK(near(found.too_far_out, boost::math::cdf(normal, -2 / std::sqrt(5.0)), 1e-4));
    CHECK(near(found.probability + found.too_far_in + found.too_far_out, 1, 1e-12));
}

TEST_CASE("a shifter's factor counts with the slope of the thin-lens equation") {
    Setup setup = plain_setup({bare_lens(-80, 4)});
    state(setup, 2, "focal_length_mm", 1, KnownBy::measured);
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    const double d = budget->shifters.front().image_distance;
    const Uncertainty found = studied(setup);
    REQUIRE_FALSE(found.contributions.empty());
    // The drawtube moves with the gain d - d f / (f - d), whose slope over f is d^2 / (f - d)^2.
    CHECK(near(found.contributions[0].sensitivity, d * d / ((-80 - d) * (-80 - d)), 1e-6));
}

TEST_CASE("drawing setups at random agrees with the folded chances") {
    Setup setup = three_out();
    state(setup, 0, "back_focus_mm", 2, KnownBy::measured);
    state(setup, index_of<SplitterHead>(setup), "stated_light_path_mm", 3, KnownBy::datasheet);
    state(setup, index_of<EyepiecePair>(setup), "field_stop_depth_mm", 2, KnownBy::guessed);
    constexpr int samples = 4000;
    const auto sampled = sampled_probability(exact_but_stated(setup), setup.chosen, samples);
    REQUIRE(sampled.has_value());
    const double closed = studied(setup).probability;
    CHECK(closed > 0.8);
    CHECK(closed < 0.95);
    // Four standard deviations of a count of 4000.
    CHECK(near(*sampled, closed, 4 * std::sqrt(closed * (1 - closed) / samples)));
}

TEST_CASE("one rectangle alone, drawn at random, reaches as often as its share inside the travel") {
    Setup setup = three_out();
    state(setup, 0, "back_focus_mm", 4, KnownBy::datasheet);
    const auto sampled = sampled_probability(exact_but_stated(setup), setup.chosen, 4000);
    REQUIRE(sampled.has_value());
    CHECK(near(*sampled, 7.0 / 8, 4 * std::sqrt(7.0 / 64 / 4000)));  // focus anywhere from -1 to 7
}

TEST_CASE("a length of which nothing is said is taken as a datasheet's, plus or minus 1 mm") {
    // Common practice, no source. Back focus, light path and stop depth, each +-1 mm anywhere: three
    // rectangles have the variance 3 * 1 / 3 (GUM, 4.3.7), so the sum has a standard deviation of 1 mm.
    const Uncertainty found = studied_whole(three_out());
    REQUIRE(found.contributions.size() == 3 + 1);  // and the travel, which only bounds it
    CHECK(found.assumed == found.contributions.size());
    for (const Contribution& one : found.contributions) {
        CHECK(one.is_assumed);
        CHECK(one.tolerance == Tolerance{1, KnownBy::datasheet});
    }
    CHECK(near(found.standard, 1, slope_rounding));
    CHECK(near(found.probability, 1, 1e-4));  // three times +-1 never add up to 3
    Setup nearer = three_out();
    the<Refractor>(nearer).back_focus = {112};
    // Irwin and Hall: of the sum of three, (3 - 2)^3 / (2^3 3!) lies below -2.
    CHECK(near(studied_whole(nearer).probability, 1 - 1.0 / 48, 1e-4));
}

TEST_CASE("anywhere within plus or minus 5 mm with equal chance reaches as often as its share "
          "inside the travel") {
    for (const auto& [back_focus, chance] :
         {std::pair{113.0, 0.8}, std::pair{115.0, 1.0}, std::pair{110.0, 0.5}}) {
        Setup setup = three_out();
        the<Refractor>(setup).back_focus = {back_focus};
        state(setup, 0, "back_focus_mm", 5, KnownBy::guessed);
        // Focus at 3, 5 and 0 mm: (5 + 3) / 10, all, half.
        CHECK(near(studied(setup).probability, chance, 1e-4));
    }
}

TEST_CASE("the drawtube's travel has no part in what makes the inward margin unsure") {
    Setup setup = three_out();
    state(setup, 0, "back_focus_mm", 1, KnownBy::measured);
    state(setup, 1, "travel_mm", 20, KnownBy::measured);
    const Uncertainty found = studied(setup);
    CHECK(near(found.standard, 1, slope_rounding));
    CHECK(found.contributions.front().key == "back_focus_mm");
    CHECK(near(found.contributions.front().share, 1, slope_rounding));
}

TEST_CASE("a value is nowhere that its field does not accept") {
    Spacer ring;
    ring.length = {1};
    Setup setup = three_out();
    setup.parts.insert(setup.parts.begin() + 2, {"Ring", ring, {}});
    setup = with_valid_choice(std::move(setup));
    the<Refractor>(setup).back_focus = {113};
    state(setup, 2, "length_mm", 4, KnownBy::datasheet);
    // Focus at 113 - 110 - length; the length lies from 0 to 5 mm, never below 0: 3 of 5 reach.
    CHECK(near(studied(setup).probability, 0.6, 1e-4));
    const auto sampled = sampled_probability(exact_but_stated(setup), setup.chosen, 4000);
    REQUIRE(sampled.has_value());
    CHECK(near(*sampled, 0.6, 4 * std::sqrt(0.24 / 4000)));  // four standard deviations of a count
}

TEST_CASE("how a length is known may be all that is said: measured to 0.5 mm, guessed to 5 mm") {
    Setup setup = three_out();
    setup.parts[0].tolerances["back_focus_mm"] = {std::nullopt, KnownBy::guessed};
    state(setup, 1, "travel_mm", 2, KnownBy::guessed);
    const std::size_t head = index_of<SplitterHead>(setup);
    setup.parts[head].tolerances["stated_light_path_mm"] = {std::nullopt, KnownBy::measured};
    const Uncertainty found = studied_whole(setup);
    const auto one = [&](const std::string& key) {
        const auto at = std::find_if(found.contributions.begin(), found.contributions.end(),
                                     [&](const Contribution& value) { return value.key == key; });
        REQUIRE(at != found.contributions.end());
        return *at;
    };
    CHECK(near(one("back_focus_mm").standard, 5 / std::sqrt(3.0), 1e-5));
    CHECK(one("back_focus_mm").is_assumed);
    CHECK(near(one("stated_light_path_mm").standard, 0.5, slope_rounding));
    // What is stated wins.
    CHECK(near(one("travel_mm").standard, 2 / std::sqrt(3.0), slope_rounding));
    CHECK_FALSE(one("travel_mm").is_assumed);
}

TEST_CASE("what is derived from the stated light path has no plus or minus beside it; without one, "
          "unstated lengths of the inside are guesses") {
    Setup setup = three_out();
    const std::size_t head = index_of<SplitterHead>(setup);
    const auto inside = [&] {
        std::vector<Contribution> found;
        for (const Contribution& one : studied_whole(setup).contributions) {
            if (one.key == "entry_air_mm" || one.key == "seat_height_mm") found.push_back(one);
        }
        return found;
    };
    CHECK(inside().empty());
    state(setup, head, "seat_height_mm", 2, KnownBy::guessed);  // of a value that nobody states
    CHECK(inside().empty());
    setup.parts[head].tolerances.clear();
    the<SplitterHead>(setup).stated_light_path.reset();
    REQUIRE(inside().size() == 2);
    for (const Contribution& one : inside()) {
        CHECK(one.tolerance == Tolerance{5, KnownBy::guessed});  // common practice, no source
        CHECK(near(one.standard, 5 / std::sqrt(3.0), 1e-5));     // 1 mm of air is 1 mm of path
    }
    the<SplitterHead>(setup).seat_height = Millimetres{30};
    REQUIRE(inside().size() == 2);
    CHECK(std::ranges::any_of(inside(), [](const Contribution& one) {
        return one.key == "seat_height_mm" && one.tolerance == Tolerance{1, KnownBy::datasheet};
    }));
}

TEST_CASE("only lengths have a usual plus or minus") {
    const PartBody shifter = Shifter{};
    CHECK(tolerance_objection(shifter, "stated_factor", {std::nullopt, KnownBy::guessed}));
    CHECK_FALSE(tolerance_objection(shifter, "length_mm", {std::nullopt, KnownBy::guessed}));
}

TEST_CASE("a moving mirror is unsure by the light path it has left, not by the drawtube") {
    Setup setup = plain_setup();
    setup.parts[0].body = CassegrainMovingMirror{};
    the<SplitterHead>(setup).stated_light_path = Millimetres{110};
    state(setup, index_of<SplitterHead>(setup), "stated_light_path_mm", 2, KnownBy::measured);
    const Uncertainty found = studied(setup);
    REQUIRE_FALSE(found.contributions.empty());
    CHECK(found.is_by_mirror);
    // Every mm of light path is a mm of back focus that the mirror has no more to give.
    CHECK(near(found.contributions.front().sensitivity, -1, slope_rounding));
    CHECK(near(found.standard, 2, slope_rounding));
}

TEST_CASE("an unsure focus is a finding that names the length to measure") {
    Setup setup = three_out();
    state(setup, 0, "back_focus_mm", 4, KnownBy::guessed);
    const auto report = make_report(setup, setup.chosen, ClippingEffort{64});
    REQUIRE(report.has_value());
    const auto found = std::find_if(report->findings.begin(), report->findings.end(),
                                    [](const Finding& one) { return one.id == "reach_is_unsure"; });
    REQUIRE(found != report->findings.end());
    CHECK(found->severity == Severity::poor);
    CHECK(found->advice.find("Back focus") != std::string::npos);
    CHECK(found->advice.find("Moon") != std::string::npos);
}
