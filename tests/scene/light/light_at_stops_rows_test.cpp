#include <set>
#include <string>

#include "parts/eyepiece_pair.hpp"
#include "parts/shifter.hpp"
#include "scene/light/light_at_stops_rows.hpp"
#include "scene/sample_setups.hpp"
#include "study/findings/report.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("at every place of the field what arrives and what the openings take make up all of the "
          "light") {
    const Setup setup = clipping_setup();
    const LightRows rows = light_at_stops_rows(setup, report_of(setup));
    REQUIRE(rows.eyes.size() == 2);
    CHECK(rows.fractions.front() == 0);
    CHECK(rows.fractions.back() == 1);
    CHECK(near(rows.diameters.back(), 27, 1e-9));  // the field stop
    for (const EyeLightRows& eye : rows.eyes) {
        REQUIRE(eye.relative.size() == rows.fractions.size());
        CHECK_FALSE(eye.shares.empty());
        for (std::size_t ring = 0; ring < eye.relative.size(); ++ring) {
            double sum = eye.relative[ring];
            for (const StopShare& share : eye.shares)
                sum += share.share[ring];
            CHECK(near(sum, 1, 0.005));  // bands under a thousandth are left out
            CHECK(eye.lowest[ring] <= eye.relative[ring] + 1e-12);
        }
        CHECK(std::is_sorted(
            eye.shares.begin(), eye.shares.end(),
            [](const StopShare& a, const StopShare& b) { return a.largest > b.largest; }));
        std::set<std::string> names;
        for (const StopShare& share : eye.shares)
            names.insert(share.name);
        CHECK(names.size() == eye.shares.size());
        CHECK(eye.values.size() == 3);
    }
    CHECK(rows.eyes[0].role == ColourRole::left_arm);
    CHECK(rows.eyes[1].role == ColourRole::right_arm);
    CHECK(rows.sentence.find("aperture work on axis") != std::string::npos);
}

TEST_CASE("a setup that loses nothing says so") {
    Setup setup = cured_setup();
    setup.parts[6].body.get<EyepiecePair>().field_stop = {8};
    setup.parts[4].body.get<Shifter>().clear_diameter = {24};
    const LightRows rows = light_at_stops_rows(setup, report_of(setup));
    CHECK(rows.sentence == "All of the objective's light arrives everywhere in the field.");
    CHECK(rows.eyes[0].shares.empty());
    CHECK(rows.eyes[0].values[1].value == "100");
}
