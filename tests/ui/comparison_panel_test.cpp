#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("the panel asks for the setup that was chosen, and the picture's place") {
    Desk desk;
    desk.comparison.choices = {
        {"opened", "As it was opened", "The setup before the first change."}};
    desk.frame(2);
    CHECK_FALSE(desk.last.comparison.has_value());
    desk.session.study = "comparison";
    desk.session.study_is_wide = true;
    desk.frame(2);
    CHECK_FALSE(desk.last.comparison.has_value());  // nothing is chosen yet
    desk.click("comparison/other");
    desk.click("comparison/other/opened");
    desk.frame();
    REQUIRE(desk.last.comparison.has_value());
    CHECK(desk.last.comparison->key == "opened");
    CHECK(desk.last.comparison->place == CompanionPlace::none);
    desk.click("comparison/place/Beside");
    desk.frame();
    REQUIRE(desk.last.comparison.has_value());
    CHECK(desk.last.comparison->place == CompanionPlace::beside);
    desk.session.study = "magnification";  // the picture keeps both
    desk.frame();
    CHECK(desk.last.comparison.has_value());
}

TEST_CASE(
    "results and parts of both setups stand beside each other, and a part can be selected there") {
    Desk desk;
    desk.session.study = "comparison";
    desk.session.study_is_wide = true;
    desk.session.compare_with = "opened";
    Setup other = desk.setup();
    auto changed = with_field(other.parts[0].body, "back_focus_mm", 99.0);
    REQUIRE(changed.has_value());
    other.parts[0].body = *changed;
    const ComparedSetup held{"Before", other, make_report(other, other.chosen, {32}).value()};
    desk.comparison.other = &held;
    desk.frame(2);
    CHECK(desk.log.widgets.contains("comparison/summary"));
    CHECK(desk.log.widgets.contains("comparison/result/0"));
    REQUIRE(desk.log.widgets.contains("comparison/part/0"));
    desk.click("comparison/part/0");
    CHECK(desk.session.selected_part == 0);
    desk.click("comparison/keep");
    CHECK(desk.session.compare_with == "kept");
}
