#include <algorithm>
#include <set>

#include "base/text.hpp"
#include "parts/shifter.hpp"
#include "scene/sample_setups.hpp"
#include "scene/tour/tour_quotes.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::string quoted(const Setup& setup, const std::string& caption) {
    const auto quotes = tour_quotes(setup, report_of(setup));
    const auto filled = filled_caption(caption, quotes);
    REQUIRE(filled);
    return *filled;
}

// "12.3 mm short", where an unbroken space (U+00A0, in UTF-8 from C2 on) stands before the unit, as 12.3
double leading_number(const std::string& text) {
    const auto number = parse_number(text.substr(0, text.find('\xC2')));
    REQUIRE(number);
    return *number;
}

}  // namespace

TEST_CASE("what the chain spends less what the telescope has is what the drawtube lacks") {
    // Sky and an eye without a fault: the image is wanted on the field stop itself, so the budget is a plain sum.
    const Setup setup = short_setup();
    const double lacks = leading_number(quoted(setup, "{focus.shortfall}"));
    const double spent = leading_number(quoted(setup, "{chain.path}"));
    const double has = leading_number(quoted(setup, "{focus.back_focus}"));
    CHECK(near(has, 116, 1e-9));  // the sample's own back focus
    // Each number is printed with one decimal; three of them add up to three half digits.
    CHECK(near(lacks, spent - has, 0.15 + 1e-9));
    CHECK(quoted(setup, "it is {focus.shortfall}.").ends_with("\u00A0mm short."));
}

TEST_CASE("a setup that reaches is in focus, and its shifter obeys the thin-lens equation") {
    const Setup setup = cured_setup();
    CHECK(quoted(setup, "{focus.shortfall}") == "in focus");
    const auto& shifter = *find_part<Shifter>(setup);
    const double distance = leading_number(quoted(setup, "{shifter.distance}"));
    const std::string factor_text = quoted(setup, "{shifter.factor}");
    const auto factor = parse_number(factor_text.substr(0, factor_text.find("×")));
    REQUIRE(factor);
    // M = 1 - d / f, gain = d - d / M (thin-lens equation); d is printed to 0.05 mm, M to 0.005.
    const double f = shifter.lens_focal_length().value;
    CHECK(near(*factor, 1 - distance / f, 0.005 + 0.05 / std::abs(f)));
    const double gain = leading_number(quoted(setup, "{shifter.gain}"));
    CHECK(near(gain, distance - distance / (1 - distance / f), 0.15));
}

TEST_CASE("without a shifter its values say so, under the same names") {
    CHECK(quoted(short_setup(), "{shifter.gain}") == "no shifter");
    const auto without = tour_quotes(short_setup(), report_of(short_setup()));
    const auto with = tour_quotes(cured_setup(), report_of(cured_setup()));
    CHECK(std::equal(without.begin(), without.end(), with.begin(), with.end(),
                     [](const auto& a, const auto& b) { return a.name == b.name; }));
}

TEST_CASE("a cube without loss gives all light away: the two shares make 100 %") {
    const Setup setup = short_setup();
    CHECK(near(leading_number(quoted(setup, "{head.left}"))
                   + leading_number(quoted(setup, "{head.right}")),
               100, 1e-9));
}

TEST_CASE("a caption with an unknown value or an open brace is refused with the nearest name") {
    const auto quotes = tour_quotes(short_setup(), report_of(short_setup()));
    const auto unknown = filled_caption("It is {focus.shortfal}", quotes);
    REQUIRE_FALSE(unknown);
    CHECK(unknown.error().code == ErrorCode::bad_input);
    CHECK(unknown.error().what.find("'{focus.shortfall}'") != std::string::npos);
    const auto open = filled_caption("It is {focus", quotes);
    REQUIRE_FALSE(open);
    CHECK(open.error().what.find("without its '}'") != std::string::npos);
    CHECK(*filled_caption("a {{ brace } and nothing", quotes) == "a { brace } and nothing");
    CHECK(filled_caption("", quotes)->empty());
}

TEST_CASE("a file may quote just the names that there are") {
    const Setup setup = short_setup();
    std::set<std::string> there;
    for (const TourQuote& quote : tour_quotes(setup, report_of(setup)))
        there.insert(quote.name);
    std::set<std::string> known;
    for (const std::string_view name : quote_names())
        known.emplace(name);
    CHECK(there == known);
}
