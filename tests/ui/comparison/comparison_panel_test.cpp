#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("the panel asks for the setup that was chosen, and the picture's place") {
    Desk desk;
    desk.comparison.choices = {
        {"opened", "As it was opened", "The setup before the first change."}};
    desk.frame(2);
    CHECK_FALSE(desk.last.comparison.shown.has_value());
    desk.session.layout.study = "comparison";
    desk.session.layout.study_is_wide = true;
    desk.frame(2);
    CHECK_FALSE(desk.last.comparison.shown.has_value());  // nothing is chosen yet
    desk.click("comparison/other");
    desk.click("comparison/other/opened");
    desk.frame();
    REQUIRE(desk.last.comparison.shown.has_value());
    CHECK(desk.last.comparison.shown->key == "opened");
    CHECK(desk.last.comparison.shown->place == CompanionPlace::none);
    desk.click("comparison/place/Beside");
    desk.frame();
    REQUIRE(desk.last.comparison.shown.has_value());
    CHECK(desk.last.comparison.shown->place == CompanionPlace::beside);
    desk.session.layout.study = "magnification";  // the picture keeps both
    desk.frame();
    CHECK(desk.last.comparison.shown.has_value());
}

TEST_CASE("a split picture has half the width, and both halves turn together") {
    Desk desk(short_setup());
    const int whole = desk.last.picture.scene.width;
    CHECK_FALSE(desk.last.picture.shows_other_half);
    const Frame other = as_half(desk.picture(), "The other one");
    desk.other_frame = &other;
    desk.frame(3);
    CHECK(desk.last.picture.shows_other_half);
    CHECK(std::abs(2 * desk.last.picture.scene.width - whole) <= 1);
    desk.frame(60);  // it has come to rest farther away
    const Camera before = desk.session.pose.camera;
    const ImVec2 at = desk.place("picture/other", 0.6F, 0.3F);
    desk.drag(at, {at.x + 60, at.y});
    CHECK_FALSE((desk.session.pose.camera == before));
    desk.wheel(at, 2);
    CHECK(desk.session.pose.camera.distance_mm < before.distance_mm);
    CHECK_FALSE(desk.session.pose.selected_part.has_value());
    desk.other_frame = nullptr;
    desk.frame(2);
    CHECK(desk.last.picture.scene.width == whole);
}

TEST_CASE(
    "results and parts of both setups stand beside each other, and a part can be selected there") {
    Desk desk;
    desk.session.layout.study = "comparison";
    desk.session.layout.study_is_wide = true;
    desk.session.comparison.with = "opened";
    Setup other = desk.setup();
    auto changed = with_field(other.parts[0].body, "back_focus_mm", 99.0);
    REQUIRE(changed.has_value());
    other.parts[0].body = *changed;
    const ComparedSetup held{"Before", other, make_report(other, other.chosen, {32}).value()};
    desk.comparison.other = std::make_shared<const ComparedSetup>(held);
    desk.frame(2);
    CHECK(desk.log.widgets.contains("comparison/summary"));
    CHECK(desk.log.widgets.contains("comparison/result/0"));
    REQUIRE(desk.log.widgets.contains("comparison/part/0"));
    desk.click("comparison/part/0");
    CHECK(desk.session.pose.selected_part == 0);
    desk.click("comparison/keep");
    CHECK(desk.session.comparison.with == "kept");
}
