#include "parts/refractor.hpp"
#include "scene/sample_setups.hpp"
#include "scene/ways_to_focus/ways_to_focus_rows.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

std::string told(const GivenLight& before, const GivenLight& after) {
    Report report;
    WayToFocus way;
    way.light_before = before;
    way.light = after;
    report.ways_to_focus = {way};
    return ways_to_focus_rows(report).at(0).light;
}

}  // namespace

TEST_CASE("a way tells what light it loses, and that it loses none") {
    const GivenLight before{{200}, 0.9, 0.2, 0.1};
    // By hand: 2.5 log10 (0.2 / 0.162) = 0.229; 2.5 log10 2 = 0.753.
    CHECK(told(before, {{180}, 0.7, 0.162, 0.05})
          == "Light: working aperture 180 mm instead of 200 mm; stars 0.23 mag fainter; sky and "
             "nebulae 0.75 mag dimmer; edge of the field lit to 70 % instead of 90 %");
    CHECK(told(before, before) == "Light: none lost");
    CHECK(told(before, {{200}, 0.9, 0.4, 0.1}) == "Light: stars 0.75 mag brighter");
    CHECK(told(before, {{0}, 0, 0, 0}) == "Light: none reaches the middle of the field");
    CHECK(told({{0}, 0.5, 0, 0}, {{200}, 0.5, 0.2, 0.1})
          == "Light: none came through before; working aperture 200 mm instead of 0 mm");
}

TEST_CASE("each way to focus says what it gives and costs, with a sign for whether it suffices") {
    const Report report = report_of(worked_budget(), 16);
    const auto rows = ways_to_focus_rows(report);
    REQUIRE(rows.size() == report.ways_to_focus.size());
    REQUIRE(rows.size() >= 3);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK((rows[i].sign == FindingSign::cross) == !report.ways_to_focus[i].reaches);
        CHECK(rows[i].effect.find(" mm") != std::string::npos);
        CHECK(rows[i].cost.find(". ") != std::string::npos);
    }
    CHECK(ways_to_focus_sentence(report).find("35.0 mm of light path") == 0);
    Setup well = worked_budget();
    well.parts[0].body.get<Refractor>().back_focus = Millimetres{170};
    CHECK(ways_to_focus_rows(report_of(well, 16)).empty());
    CHECK(ways_to_focus_sentence(report_of(well, 16)).find("24.0 mm to spare")
          != std::string::npos);
}
