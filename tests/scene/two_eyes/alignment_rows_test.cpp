#include <cmath>
#include <numbers>

#include "parts/eyepiece_pair.hpp"
#include "scene/sample_setups.hpp"
#include "scene/two_eyes/alignment_rows.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// The left eyepiece off by what looks like this many arcminutes upward or to the right.
Setup off_by(double right_arcmin, double up_arcmin) {
    Setup setup = cured_setup();
    for (Part& part : setup.parts) {
        if (auto* pair = part.body.as<EyepiecePair>()) {
            const double minute = std::numbers::pi / 180 / 60 * pair->focal_length.value;
            pair->left_play_x = {-right_arcmin * minute};
            pair->left_play_y = {-up_arcmin * minute};
        }
    }
    return setup;
}

AlignmentRows rows_of(const Setup& setup) { return alignment_rows(setup, report_of(setup, 16)); }

}  // namespace

TEST_CASE("the left image's mark stands where it is seen against the right one") {
    const AlignmentRows rows = rows_of(off_by(30, 10));
    CHECK(near(rows.left_x, 30, 0.01));  // arc tangent against angle: 30'^3 / 3
    CHECK(near(rows.left_y, 10, 0.01));
    CHECK(rows.values[0].label == "Eyes must turn inward");
    CHECK(rows.values[0].value == "30.0");
    CHECK(rows.values[0].verdict == "comfortable");
    CHECK(rows.values[1].label == "Left image higher");
    CHECK(rows.values[1].limit == "20 / 30");
    CHECK(rows.reach > 100);
}

TEST_CASE(
    "turning outward and height are judged by their own limits, and the worst gives the sentence") {
    const AlignmentRows outward = rows_of(off_by(-30, 0));
    CHECK(outward.values[0].label == "Eyes must turn outward");
    CHECK(outward.values[0].verdict == "hard");
    CHECK(outward.sentence == "The two images are hard to merge for long.");
    const AlignmentRows high = rows_of(off_by(0, -31));
    CHECK(high.values[1].label == "Right image higher");
    CHECK(high.values[1].verdict == "too much");
    CHECK(high.sentence == "The two images do not merge.");
    CHECK(rows_of(off_by(0, 0)).sentence == "The two images merge with ease.");
}

TEST_CASE("frames reach farther inward than outward, and the tolerance table says what is stated") {
    const AlignmentRows rows = rows_of(off_by(10, 0));
    CHECK(rows.comfortable.high_x > -rows.comfortable.low_x);
    CHECK(rows.end.half_height > rows.comfortable.half_height);
    REQUIRE_FALSE(rows.tolerances.empty());
    int stated = 0;
    for (const ToleranceRow& row : rows.tolerances) {
        CAPTURE(row.label);
        CHECK(row.help.ends_with('.'));
        CHECK_FALSE(row.unit.empty());
        if (row.stated == "–") continue;
        ++stated;
        CHECK(row.label == "left eyepiece: off sideways");
        CHECK(near(row.used, 0.5, 0.01));  // 10' of the 20' that reach the limit
    }
    CHECK(stated == 1);
}
