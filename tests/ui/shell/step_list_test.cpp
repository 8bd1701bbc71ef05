#include "parts/spacer.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE(
    "the list of changes names each step with what it was and became, and a click goes there") {
    Desk desk;
    CHECK_FALSE(desk.widget("edit/steps").enabled);
    desk.select(desk.index<Spacer>());
    const double first = desk.the<Spacer>().length.value;
    const std::string name = desk.setup().parts[desk.index<Spacer>()].name;
    desk.retype("field/length_mm/entry", "5");
    desk.retype("field/length_mm/entry", "7");
    desk.click("edit/steps");
    CHECK(desk.widget("edit/step/0").label == "As opened");
    CHECK(desk.widget("edit/step/2").label == name + ": Length 5 → 7 mm");
    desk.click("edit/step/0");
    CHECK(desk.the<Spacer>().length.value == first);
    CHECK_FALSE(desk.widget("edit/undo").enabled);
    CHECK(desk.widget("edit/redo").enabled);
    desk.click("edit/step/2");  // the list stays open to look around
    CHECK(desk.the<Spacer>().length.value == 7);
}

TEST_CASE("the list of changes opens and is used by keys alone") {
    Desk desk;
    desk.select(desk.index<Spacer>());
    desk.retype("field/length_mm/entry", "5");
    desk.key(ImGuiKey_Escape);
    desk.key(ImGuiKey_H, {ImGuiMod_Ctrl});
    REQUIRE(desk.has("edit/step/1"));
    desk.key(ImGuiKey_UpArrow);
    desk.key(ImGuiKey_Enter);
    CHECK_FALSE(desk.history().can_undo());
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("edit/step/1"));
}

TEST_CASE("a slider's step tells where it began, not where it was last") {
    Desk desk;
    desk.select(desk.index<Spacer>());
    const double first = desk.the<Spacer>().length.value;
    desk.drag(desk.place("field/length_mm/slider", 0.2F),
              desk.place("field/length_mm/slider", 0.8F));
    REQUIRE(desk.history().labels().size() == 1);
    CAPTURE(desk.history().labels().front());
    CHECK(desk.history().labels().front().find(": Length 1 → ") != std::string::npos);
    CHECK(first == 1);
}
