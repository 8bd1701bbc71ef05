#include <cmath>
#include <limits>
#include <random>

#include "parts/part.hpp"
#include "reference/home_measurements.hpp"
#include "reference/visual_telescope.hpp"
#include "study/home_measurement/home_measurement.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Reading once(double value, double plus_minus = 0) { return {{value}, plus_minus}; }

MeasurementResult result_of(const std::string& key, const std::vector<Reading>& readings) {
    const auto made = evaluate(find_home_measurement(key).value(), readings);
    REQUIRE(made.has_value());
    return *made;
}

constexpr double arcseconds_per_radian = 206264.806247;

}  // namespace

TEST_CASE("a star on the equator drifts by the published rate, any other by the cosine of its "
          "declination") {
    const double a_second = drift_angle(1, {0}).value * arcseconds_per_radian;
    CHECK(near(a_second, reference::sidereal_arcseconds_per_second, 1e-4));  // its last digit
    const double at_60 = drift_angle(1, {60}).value * arcseconds_per_radian;
    CHECK(near(at_60, a_second / 2, 1e-6));  // cos 60 = 1/2; the arc's bend is far below
    // Half a turn on the equator is half the sky; at declination 60 it is the arc through the pole.
    CHECK(near(drift_angle(sidereal_day_seconds / 2, {0}).value, std::acos(-1.0), 1e-6));
    CHECK(near(to_degrees(drift_angle(sidereal_day_seconds / 2, {60})).value, 60, 1e-6));
}

TEST_CASE("a field stop follows from drift timing as worked by hand") {
    for (const auto& row : reference::drifts) {
        CAPTURE(row.seconds);
        const double stop =
            field_stop_by_drift({row.focal_length}, row.seconds, {row.declination}).value;
        // The hand's arc against the tangent of half of it: a^3 / 12 F, at most 1.5 um here.
        CHECK(near(stop, row.field_stop, 2e-3));
    }
}

TEST_CASE("a paper screen at a near target gives the back focus of the sky, less Newton's shift") {
    const double sky = std::numeric_limits<double>::infinity();
    CHECK(near(back_focus_by_paper({20}, {96}, {700}, {sky}).value, 116, 1e-12));
    for (const auto& row : reference::near_targets) {
        const auto back =
            back_focus_by_paper({10}, {150}, {row.focal_length}, {row.distance / 1000});
        CHECK(near(back.value, 160 - row.shift, 1e-5));  // last digit of the table
    }
}

TEST_CASE("a lamp's circle is larger than the opening by similar triangles") {
    // A lamp 2 m in front and paper half a metre behind: the circle is 5/4 of the opening.
    CHECK(near(opening_by_lamp({30}, {2000}, {500}).value, 24, 1e-12));
    CHECK(near(opening_by_lamp({24}, {2000}, {0}).value, 24, 1e-12));
}

TEST_CASE("glass is as deep as the strip goes below the bar that it is marked at, less the bar") {
    const auto depth = result_of("depth_by_paper", {once(33.5, 0.5), once(12, 0.2)});
    CHECK(near(depth.result.value, 21.5, 1e-12));
    CHECK(near(depth.result.plus_minus, std::hypot(0.5, 0.2), 1e-9));
}

TEST_CASE("a mean's plus-minus is its standard error joined with the tool's own") {
    const Reading three{{10, 11, 12}, 0};
    CHECK(near(mean_of(three).value, 11, 1e-12));
    CHECK(near(mean_of(three).plus_minus, reference::standard_error_of_three, 1e-5));
    const Measured with_tool = mean_of({{10, 11, 12}, 1});
    CHECK(near(with_tool.plus_minus, std::sqrt(4.0 / 3), 1e-12));  // 1/3 + 1
    CHECK(mean_of(once(7, 0.3)) == Measured{7, 0.3});
}

TEST_CASE("plus-minus of a difference is the root of the sum of squares, of a quotient that of its "
          "shares") {
    const auto path = result_of("light_path_by_travel", {once(80, 0.3), once(45, 0.4), Reading{}});
    CHECK(near(path.result.value, 35, 1e-12));
    CHECK(near(path.result.plus_minus, 0.5, 1e-12));  // 3, 4, 5
    const auto factor = result_of("factor_by_scale", {once(26, 0.26), once(10, 0.1)});
    CHECK(near(factor.result.value, 2.6, 1e-12));
    // 1 % and 1 % make 1.414 %; the formula's bend over 1 % changes it by 1 part in 10000.
    CHECK(near(factor.result.plus_minus / 2.6, 0.0141421, 2e-6));
    CHECK(near(factor.contributions[0].plus_minus, 0.026, 1e-9));
}

TEST_CASE("the plus-minus of every formula agrees with the scatter of many sampled readings") {
    struct Case {
        std::string key;
        std::vector<Reading> readings;
    };
    const std::vector<Case> cases{
        {"field_stop_by_drift", {once(130, 0.8), once(12, 0.3), once(1000, 6)}},
        {"opening_by_lamp", {once(27, 0.4), once(1500, 10), once(120, 2)}},
        {"back_focus_by_paper", {once(12, 0.2), once(104, 0.6), once(700, 3), once(60, 1)}},
        {"factor_by_drift", {once(130, 0.6), once(52, 0.4)}}};
    std::mt19937_64 random(31);
    for (const Case& one : cases) {
        CAPTURE(one.key);
        const HomeMeasurement measurement = find_home_measurement(one.key).value();
        constexpr int samples = 20000;
        std::vector<double> values(samples);
        double mean = 0;
        for (double& value : values) {
            std::vector<double> drawn;
            for (const Reading& reading : one.readings)
                drawn.push_back(std::normal_distribution<double>(reading.values.front(),
                                                                 reading.tool_plus_minus)(random));
            value = measurement.value(drawn);
            mean += value / samples;
        }
        double variance = 0;
        for (const double value : values)
            variance += (value - mean) * (value - mean) / (samples - 1);
        const double told = result_of(one.key, one.readings).result.plus_minus;
        // 20000 samples know a scatter to 1 / sqrt(2 * 20000) = 0.5 %; three times that.
        CHECK(near(std::sqrt(variance) / told, 1, 0.015));
    }
}

TEST_CASE("readings are understood as people write them") {
    CHECK(parse_reading("812.3", 0.5).value() == Reading{{812.3}, 0.5});
    CHECK(parse_reading(" 112.4 112,1; 112.9 ± 0,3 ", 1).value()
          == Reading{{112.4, 112.1, 112.9}, 0.3});
    CHECK(parse_reading("35+-0.2", 1).value() == Reading{{35}, 0.2});
    CHECK(parse_reading("35 +/- 0.2", 1).value() == Reading{{35}, 0.2});
    CHECK(parse_reading("", 0.5).value() == Reading{{}, 0.5});
    for (const char* wrong : {"a", "12 b", "12 ± x", "12 ± -1", "12 ±"}) {
        CAPTURE(wrong);
        CHECK_FALSE(parse_reading(wrong, 1).has_value());
    }
}

TEST_CASE("what is missing, out of range or contradictory is told") {
    const auto drift = find_home_measurement("field_stop_by_drift").value();
    const auto missing = evaluate(drift, std::vector<Reading>{once(100), Reading{}, once(1000)});
    REQUIRE_FALSE(missing.has_value());
    CHECK(missing.error().what == "Declination of the star is missing");
    const auto outside = evaluate(drift, std::vector<Reading>{once(100), once(89), once(1000)});
    REQUIRE_FALSE(outside.has_value());
    CHECK(outside.error().what.find("-80") != std::string::npos);
    const auto near_lens = find_home_measurement("back_focus_by_paper").value();
    CHECK_FALSE(evaluate(near_lens, std::vector<Reading>{once(0), once(100), once(5000), once(5)})
                    .has_value());  // the target stands in the focus of the lens
    CHECK_FALSE(find_home_measurement("field_stop_by_drfit").has_value());
}

TEST_CASE("every measurement has steps, a formula and fields that some part kind has") {
    for (const HomeMeasurement& one : home_measurements()) {
        CAPTURE(one.key);
        CHECK(one.steps.size() >= 3);
        CHECK_FALSE(one.cautions.empty());
        CHECK(one.formula.size() > 40);
        REQUIRE_FALSE(one.fields.empty());
        for (const std::string& key : one.fields) {
            CAPTURE(key);
            bool is_known = false;
            for (const PartKind& kind : part_kinds())
                is_known = is_known || field_value(kind.fresh, key).has_value();
            CHECK(is_known);
        }
    }
}
