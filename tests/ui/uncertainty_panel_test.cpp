#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("the study of uncertainty says when nothing is stated, and how sure focus is when "
          "something is") {
    Setup setup = cured_setup();
    Desk plain(setup);
    plain.session.study = "uncertainty";
    plain.frame(3);
    CHECK_FALSE(plain.has("uncertainty/headline"));
    setup.parts[0].tolerances["back_focus_mm"] = {40, KnownBy::measured};
    Desk desk(setup);
    desk.session.study = "uncertainty";
    desk.frame(3);
    REQUIRE(desk.has("uncertainty/headline"));
    CHECK(desk.widget("uncertainty/headline").label.find("% sure") != std::string::npos);
    CHECK(desk.has("uncertainty/row/0"));
    desk.click("uncertainty/row/0");
    CHECK(desk.session.selected_part == 0);
}

TEST_CASE("a part's plus or minus is typed in below its fields, once they are unfolded") {
    Desk desk;
    desk.session.selected_part = 0;
    desk.frame(3);
    CHECK_FALSE(desk.has("tolerance/back_focus_mm/entry"));
    desk.click("tolerances");
    CHECK(desk.has("tolerance/back_focus_mm/entry"));
}
