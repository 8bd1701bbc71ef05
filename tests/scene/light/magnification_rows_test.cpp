#include "parts/shifter.hpp"
#include "scene/light/magnification_rows.hpp"
#include "scene/row_named.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("magnification, true field and exit pupil are those of 740 mm, 25 mm and 100 mm") {
    // W. J. Smith, Modern Optical Engineering, 4th ed., sec. 13.1: power is the ratio of focal lengths,
    // exit pupil the aperture over the power; the field stop seen from the objective is the true field.
    const auto rows = magnification_rows(report_of(short_setup()));
    CHECK(row_named(rows, "Magnification").value == "30");  // 29.6
    CHECK(row_named(rows, "Exit pupil").value == "3.38");   // 100 / 29.6 = 3.378
    CHECK(row_named(rows, "True field").value == "1.63");   // 2 atan(10.5 / 740) = 1.626 degrees
    CHECK(row_named(rows, "Shifter factor").value == "1.00");
    CHECK(row_named(rows, "Effective focal length").value == "740");
    CHECK(row_named(rows, "Focal ratio").value == "7.4");
    for (const ValueRow& row : rows) {
        CHECK_FALSE(row.help.empty());
        CHECK(row.help.back() == '.');
    }
}
