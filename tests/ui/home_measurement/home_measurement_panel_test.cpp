#include "parts/eyepiece_pair.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("a field stop timed by drift is filled in with one click and taken back with one undo") {
    Desk desk;
    desk.session.layout.study = "home_measurement";
    desk.session.layout.study_is_wide = true;
    desk.frame(3);
    desk.click("measurement");
    desk.click("measurement/field_stop_by_drift");
    desk.retype("reading/seconds", "380 380.4 379.6");
    desk.retype("reading/declination_deg", "0");
    CHECK(desk.widget("measurement/result").label.find(" ± ") != std::string::npos);
    CHECK(desk.widget("measurement/result").tooltip.find("Explanatory Supplement")
          != std::string::npos);
    const double before = desk.the<EyepiecePair>().field_stop.value;
    desk.click("measurement/fill");
    CHECK(desk.the<EyepiecePair>().field_stop.value != before);
    const auto& known = desk.setup().parts[desk.setup().chosen.eyepiece].tolerances;
    REQUIRE(known.contains("field_stop_mm"));
    CHECK(known.at("field_stop_mm").known_by == KnownBy::measured);
    CHECK(known.at("field_stop_mm").plus_minus > 0);
    desk.undo();
    CHECK(desk.setup().parts[desk.setup().chosen.eyepiece].tolerances.empty());
    CHECK(desk.the<EyepiecePair>().field_stop.value == before);
    CHECK_FALSE(desk.history().can_undo());
}

TEST_CASE("without all readings nothing can be filled in") {
    Desk desk;
    desk.session.layout.study = "home_measurement";
    desk.session.layout.study_is_wide = true;
    desk.frame(3);
    desk.click("measurement/fill");
    CHECK(desk.edits.empty());
    CHECK(desk.widget("measurement/result").label.find("missing") != std::string::npos);
}
