#include "parts/eyepiece_pair.hpp"
#include "scene/home_measurement/home_measurement_rows.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

MeasurementDraft drift_draft() {
    return {"field_stop_by_drift",
            {{"field_stop_by_drift/seconds", "400 400 400 ± 2"},
             {"field_stop_by_drift/declination_deg", "0 ± 0"},
             {"field_stop_by_drift/focal_length_mm", "700 ± 0"}},
            0};
}

}  // namespace

TEST_CASE("the telescope's focal length is suggested, and all else waits to be entered") {
    const auto rows = home_measurement_rows(short_setup(), {"field_stop_by_drift", {}, 0});
    REQUIRE(rows.readings.size() == 3);
    CHECK(rows.readings[2].text == "740");
    CHECK(rows.readings[0].text.empty());
    CHECK_FALSE(rows.result.has_value());
    CHECK(rows.problem == "Time across the field is missing");
    CHECK_FALSE(fill_edit(rows).has_value());
}

TEST_CASE(
    "a result is told with two digits of its plus-minus and fills the eyepieces' field stop") {
    const auto rows = home_measurement_rows(short_setup(), drift_draft());
    // 6016.44 arcseconds of 700 mm are 20.419 mm (tests/reference/home_measurements.hpp); 2 s in 400 s
    // are 0.102 mm of it.
    CHECK(rows.result_text == "20.42 ± 0.10 mm");
    CHECK(rows.readings[0].mean == "mean of 3: 400.0 ± 2.0 s");
    CHECK(rows.readings[0].share == "0.102 mm");
    REQUIRE(rows.targets.size() == 1);
    CHECK(rows.targets[0].label == "Field stop of 25 mm pair");
    CHECK(rows.targets[0].present == "21 mm");
    const auto edit = fill_edit(rows);
    REQUIRE(edit.has_value());
    const auto filled = apply(Document{short_setup(), {}, {}, {}}, *edit);
    REQUIRE(filled.has_value());
    const double stop = filled->setup.parts[5].body.get<EyepiecePair>().field_stop.value;
    CHECK(stop > 20.41);
    CHECK(stop < 20.43);
}

TEST_CASE("a result that a part cannot have is not filled in, and is told why") {
    MeasurementDraft draft = drift_draft();
    draft.readings["field_stop_by_drift/seconds"] = "900";  // 46 mm do not fit a 28 mm barrel
    Setup setup = short_setup();
    setup.parts[5].body.get<EyepiecePair>().field_stop_depth = {5};
    const auto rows = home_measurement_rows(setup, draft);
    REQUIRE(rows.result.has_value());
    CHECK_FALSE(rows.targets.at(0).problem.empty());
    CHECK_FALSE(fill_edit(rows).has_value());
}

TEST_CASE("a word among the numbers is told beside its entry") {
    MeasurementDraft draft = drift_draft();
    draft.readings["field_stop_by_drift/seconds"] = "400 about";
    const auto rows = home_measurement_rows(short_setup(), draft);
    CHECK(rows.readings[0].problem.find("'about' is not a number") == 0);
    CHECK_FALSE(rows.result.has_value());
}

TEST_CASE("each opening of the setup can take the lamp's result") {
    const auto rows = home_measurement_rows(short_setup(), {"opening_by_lamp", {}, 99});
    CHECK(rows.targets.size() >= 6);
    CHECK(rows.target == rows.targets.size() - 1);
}
