#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("a way to focus is tried with one click and taken back with one undo") {
    Desk desk(short_setup());
    desk.session.layout.study = "ways_to_focus";
    desk.frame(2);
    const Setup before = desk.history().document()->setup;
    REQUIRE(desk.has("ways_to_focus/0/try"));
    desk.click("ways_to_focus/0/try");
    const Setup after = desk.history().document()->setup;
    CHECK_FALSE(after == before);
    const auto budget = focus_budget(after, after.chosen);
    REQUIRE(budget.has_value());
    CHECK(budget->reaches);
    desk.undo();
    CHECK(desk.history().document()->setup == before);
}
