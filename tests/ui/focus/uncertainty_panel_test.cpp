#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("the study of uncertainty says how sure focus is, and which plus or minus is assumed") {
    Setup setup = cured_setup();
    setup.parts[0].tolerances["back_focus_mm"] = {40, KnownBy::measured};
    Desk desk(setup);
    desk.session.layout.study = "uncertainty";
    desk.frame(3);
    REQUIRE(desk.has("uncertainty/headline"));
    CHECK(desk.widget("uncertainty/headline").label.find("% sure") != std::string::npos);
    CHECK(desk.widget("uncertainty/assumed").label.find("assumed") != std::string::npos);
    CHECK(desk.has("uncertainty/row/0"));
    desk.click("uncertainty/row/0");
    CHECK(desk.session.pose.selected_part == 0);
}

TEST_CASE("that a length is guessed can be said without a number") {
    Desk desk;
    desk.session.pose.selected_part = 0;
    desk.frame(3);
    desk.click("tolerances");
    desk.frame(2);
    const std::string chooser = "tolerance/back_focus_mm/known_by";
    REQUIRE(desk.has(chooser));
    CHECK(desk.widget(chooser).label == "datasheet (assumed)");
    desk.click(chooser);
    desk.frame(2);
    desk.click(chooser + "/guessed");
    desk.frame(2);
    const auto& tolerances = desk.setup().parts[0].tolerances;
    REQUIRE(tolerances.contains("back_focus_mm"));
    CHECK(tolerances.at("back_focus_mm") == Tolerance{std::nullopt, KnownBy::guessed});
    CHECK(desk.widget(chooser).label == "guessed (assumed)");
}

TEST_CASE("a part's plus or minus is typed in below its fields, once they are unfolded") {
    Desk desk;
    desk.session.pose.selected_part = 0;
    desk.frame(3);
    CHECK_FALSE(desk.has("tolerance/back_focus_mm/entry"));
    desk.click("tolerances");
    CHECK(desk.has("tolerance/back_focus_mm/entry"));
}
