#include <algorithm>

#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "scene/focus/reach_table_rows.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("the reach table marks the chosen combination and says by how much it falls short") {
    const Setup setup = short_setup();
    const Report report = report_of(setup, 64);
    const ReachRows rows = reach_table_rows(setup, report);
    REQUIRE(rows.rows.size() == 1);
    const ReachRow& row = rows.rows.front();
    CHECK(row.is_chosen);
    CHECK_FALSE(row.reaches);
    CHECK(row.change == "As chosen");
    CHECK(row.role == ColourRole::shortfall);
    CHECK(row.cells.size() == rows.columns.size());
    CHECK(row.cells[reach_column].find("mm short in") != std::string::npos);
    CHECK(rows.summary.find("0 of 1") != std::string::npos);
    CHECK(rows.one_place.find("No one drawtube position") == 0);
}

TEST_CASE("every number in the reach table has a formula to hover, and its unit") {
    const Setup setup = cured_setup();
    const ReachRows rows = reach_table_rows(setup, report_of(setup, 64));
    for (const ReachColumn& column : rows.columns) {
        CAPTURE(column.heading);
        CHECK(column.help.size() > 10);
        if (column.is_number) CHECK_FALSE(column.unit.empty());
    }
    CHECK(rows.rows.front().reaches);
    CHECK(rows.one_place.find("serve every combination") != std::string::npos);
}

TEST_CASE("reach, its summary and the line of each observer know whom the head does not fit") {
    Setup setup = cured_setup();
    for (Part& part : setup.parts) {
        if (part.body.is<SplitterHead>()) {
            part.body.get<SplitterHead>().hinge_low = {10};  // 2 x 37 cos: 52.3 to 72.9 mm
            part.body.get<SplitterHead>().hinge_high = {45};
        }
    }
    Observer wide;
    wide.pupil_distance = {76};
    setup.parts.insert(setup.parts.begin() + static_cast<long>(setup.chosen.observer) + 1,
                       {"Wide eyes", wide, {}, {}});
    const ReachRows rows = reach_table_rows(setup, report_of(with_valid_choice(setup), 64));
    CHECK(rows.summary
          == "All 2 combinations reach focus, but only 1 can be used with both eyes: the head's "
             "52.3 to 72.9 mm between the pupils do not fit Wide eyes (76.0 mm).");
    CHECK(rows.one_place.find("serve") == std::string::npos);
    CHECK(rows.one_place.find("to focus") != std::string::npos);
    CHECK(rows.rows[0].is_well);
    CHECK_FALSE(rows.rows[1].is_well);
    CHECK(rows.rows[1].cells[reach_column] == "not both eyes");
}
