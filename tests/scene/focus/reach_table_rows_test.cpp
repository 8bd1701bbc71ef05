#include <algorithm>

#include "scene/focus/reach_table_rows.hpp"
#include "scene/sample_setups.hpp"

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
