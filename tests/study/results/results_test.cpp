// The table of results: that its entries can be told apart and read as a report has them.
#include <set>

#include "study/findings/report.hpp"
#include "study/results/results.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

TEST_CASE("every result has names of its own and says what it is") {
    std::set<std::string_view> keys;
    std::set<std::string_view> labels;
    for (const ResultInfo& result : all_results()) {
        CAPTURE(result.key);
        CHECK(keys.insert(result.key).second);
        CHECK(labels.insert(result.label).second);
        CHECK(result.help.ends_with('.'));
        CHECK_FALSE(result.in_words.empty());
        CHECK(result.fine_decimals >= result.decimals);
        CHECK(&info_of(result.id) == &result);
    }
}

TEST_CASE("of both eyes the worse one counts, whichever it is") {
    Report report;
    for (const auto& [left, right] : {std::pair{0.7, 0.4}, std::pair{0.4, 0.7}}) {
        report.clipping[0].edge_relative = left;
        report.clipping[1].edge_relative = right;
        CHECK(near(info_of(ResultId::edge_light).value(report), 40, 1e-12));  // percent, rounding
    }
}

// By hand: 1000 mm through an aperture of 100 mm and an eyepiece of 25 mm magnify 40 times at f/10 and leave 2.5 mm.
TEST_CASE("results are printed with their units where a reader looks for them") {
    Report report;
    report.magnification.magnification = 40;
    report.magnification.focal_ratio = 10;
    report.magnification.exit_pupil = Millimetres{2.5};
    report.magnification.true_field = Degrees{1.2};
    const auto told = [&](ResultId id) { return info_of(id).text(info_of(id).value(report)); };
    CHECK(told(ResultId::magnification) == "40×");
    CHECK(told(ResultId::focal_ratio) == "f/10.0");
    CHECK(told(ResultId::exit_pupil) == "2.50 mm");
    CHECK(told(ResultId::true_field) == "1.20°");
    CHECK(info_of(ResultId::true_field).key_with_unit() == "true_field_deg");
    CHECK(info_of(ResultId::magnification).key_with_unit() == "magnification");
}

TEST_CASE("a chance is never told as sure") {
    const ResultInfo& chance = info_of(ResultId::focus_chance);
    CHECK(chance.text(99.97) == "> 99 %");
    CHECK(chance.text(0.02) == "< 1 %");
    CHECK(chance.text(50) == "50 %");
}
