#include <algorithm>
#include <string>

#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/focus/light_path_rows.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE(
    "a stated light path stands beside the derived one, with what becomes of the difference") {
    Setup setup = worked_budget();
    auto& known = setup.parts[4].body.get<SplitterHead>();
    known.entry_air = Millimetres{14};
    known.seat_height = Millimetres{30};
    const Report report = report_of(setup);
    const auto rows = light_path_rows(setup, report);
    const auto row_of = [&](std::size_t part) {
        const auto found = std::find_if(rows.begin(), rows.end(),
                                        [&](const auto& row) { return row.part == part; });
        REQUIRE(found != rows.end());
        return *found;
    };
    const LightPathRow adapter = row_of(2);
    CHECK(adapter.derived == "1.0");
    CHECK(adapter.stated == "–");
    CHECK(adapter.difference == "–");
    CHECK_FALSE(adapter.differs);
    const LightPathRow head = row_of(4);
    CHECK(head.name == "Splitter head");
    CHECK(head.stated == "110.0");
    CHECK(head.differs);
    CHECK(head.fits);
    // Glass: cube 25, arm prism 25 and a compensator as long as the arm offset of 37 mm.
    CHECK(head.glass == "87.0");
    const double derived = std::stod(head.derived);
    CHECK(
        near(std::stod(head.difference), 110 - derived, 0.1));  // each is rounded to its last digit
    CHECK(head.note.find("taken away") != std::string::npos);
}

TEST_CASE("of a head known from outside only, nothing differs from its stated light path") {
    const Setup setup = worked_budget();
    for (const LightPathRow& row : light_path_rows(setup, report_of(setup))) {
        if (row.part != 4) continue;
        CHECK(row.derived == "110.0");
        CHECK_FALSE(row.differs);
        CHECK(row.note.empty());
    }
}

TEST_CASE("a stated light path that the part cannot have is told to be impossible") {
    Setup setup = worked_budget();
    setup.parts[4].body.get<SplitterHead>().stated_light_path = Millimetres{60};
    const auto rows = light_path_rows(setup, report_of(setup));
    const auto head =
        std::find_if(rows.begin(), rows.end(), [](const auto& row) { return row.part == 4; });
    REQUIRE(head != rows.end());
    CHECK_FALSE(head->fits);
    CHECK(head->note.find("shorter than its glass and air can be") != std::string::npos);
}

TEST_CASE("arms of unequal glass show both light paths") {
    Setup setup = worked_budget();
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.compensator = Millimetres{20};
    head.stated_light_path.reset();
    const auto rows = light_path_rows(setup, report_of(setup));
    const auto row =
        std::find_if(rows.begin(), rows.end(), [](const auto& r) { return r.part == 4; });
    REQUIRE(row != rows.end());
    CHECK(row->derived.find(" / ") != std::string::npos);
}

TEST_CASE("a sliding head's light paths are told for the middle of its range and for now") {
    Setup setup = worked_budget();
    auto& head = setup.parts[4].body.get<SplitterHead>();
    head.mechanism = Mechanism::sliding;  // 50 to 74 mm, stated for 62
    head.stated_light_path = Millimetres{110};
    setup.parts[6].body.get<Observer>().pupil_distance = {70};
    const auto rows = light_path_rows(setup, report_of(setup, 16));
    const auto row =
        std::find_if(rows.begin(), rows.end(), [](const auto& r) { return r.part == 4; });
    REQUIRE(row != rows.end());
    CHECK(row->stated == "110.0");
    CHECK(row->now == "114.0");
    CHECK(row->derived.find(" / ") == std::string::npos);
    CHECK(row->glass == "75.0");
}
