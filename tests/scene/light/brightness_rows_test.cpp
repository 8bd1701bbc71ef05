#include <algorithm>

#include "base/text.hpp"
#include "scene/light/brightness_rows.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE(
    "every surface that takes light has one row, in the order in which each eye's light meets it") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup, 32);
    const BrightnessRows rows = brightness_rows(setup, report);
    for (std::size_t side = 0; side < 2; ++side) {
        const auto& steps = report.brightness.eyes[side].steps;
        std::size_t next = 0;
        double lost = 0;
        for (const BrightnessStepRow& row : rows.steps) {
            const auto& bar = row.eyes[side];
            if (bar.passes == "–") continue;
            REQUIRE(next < steps.size());
            CHECK(row.label == setup.parts[steps[next].part].name + ": " + steps[next].face);
            CHECK(near(bar.from, lost, 1e-12));  // the staircase goes on where it was
            CHECK(near(bar.to - bar.from, magnitudes(steps[next].passes), 1e-12));
            lost = bar.to;
            ++next;
        }
        CHECK(next == steps.size());
        CHECK(lost <= rows.most_lost + 1e-12);
    }
    const auto shared = std::ranges::count_if(rows.steps, [](const BrightnessStepRow& row) {
        return row.eyes[0].passes != "–" && row.eyes[1].passes != "–";
    });
    CHECK(shared >= 5);  // objective, diagonal's faces, shifter, cube, eyepiece
    CHECK(rows.steps.back().label.ends_with("lenses"));
}

TEST_CASE("every number of brightness has a unit and says how it is made") {
    const Setup setup = cured_setup();
    const Report report = report_of(setup, 32);
    const BrightnessRows rows = brightness_rows(setup, report);
    for (const EyePairRow& row : rows.per_eye) {
        CAPTURE(row.label);
        CHECK_FALSE(row.unit.empty());
        CHECK(row.help.ends_with('.'));
    }
    for (const ValueRow& row : rows.both) {
        CAPTURE(row.label);
        CHECK_FALSE(row.unit.empty());
        CHECK(row.help.ends_with('.'));
    }
    CHECK(rows.per_eye[0].values[0]
          == format_number(100 * report.brightness.eyes[0].throughput, 1));
    CHECK(rows.sentence.find("Each eye gets 4") == 0);  // half of it, less a tenth at coated faces
}
