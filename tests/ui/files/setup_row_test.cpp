// The row of setups that are open at once, and what is asked before one of them goes.
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

void change_title(Desk& desk) {
    Setup changed = desk.setup();
    changed.title = "Changed";
    desk.put(changed);
    desk.frame(2);
}

std::vector<std::uint64_t> shown_in_turn(const Desk& desk) {
    std::vector<std::uint64_t> numbers;
    for (const ShowSetup& shown : desk.asked<ShowSetup>())
        numbers.push_back(shown.number);
    return numbers;
}

}  // namespace

TEST_CASE("one setup alone needs no row; with two the picture makes room for one") {
    Desk desk;
    CHECK_FALSE(desk.has("setups/1"));
    const float before = desk.widget("picture/canvas").low.y;
    desk.other_setups = {{2, "Evening", "/home/club/evening.train.toml", false}};
    desk.frame(2);
    CHECK(desk.has("setups/1"));
    CHECK(desk.widget("setups/2").label == "Evening");
    CHECK(desk.widget("picture/canvas").low.y > before + 10);
}

TEST_CASE("a setup is shown by a click or by keys, round at the ends") {
    Desk desk;
    desk.other_setups = {{2, "Two", "", false}, {3, "Three", "", true}};
    desk.frame(2);
    desk.click("setups/3");
    desk.click("setups/1");  // is shown already
    desk.key(ImGuiKey_PageDown, {ImGuiMod_Ctrl});
    desk.key(ImGuiKey_PageUp, {ImGuiMod_Ctrl});
    CHECK(shown_in_turn(desk) == std::vector<std::uint64_t>{3, 2, 3});
    CHECK(desk.widget("setups/3").tooltip.find("Changed since") != std::string::npos);
}

TEST_CASE("another setup is found by its name") {
    Desk desk;
    desk.other_setups = {{7, "Church clock by day", "", false}};
    desk.frame(2);
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("church");
    desk.key(ImGuiKey_Enter);
    CHECK(shown_in_turn(desk) == std::vector<std::uint64_t>{7});
}

TEST_CASE("a setup without unsaved work closes at once: by its cross, the middle button, a key") {
    Desk desk;
    desk.other_setups = {{2, "Two", "", false}};
    desk.frame(2);
    desk.click("setups/2/close");
    desk.click("setups/2", 2);
    desk.key(ImGuiKey_W, {ImGuiMod_Ctrl});
    const auto closed = desk.asked<CloseSetup>();
    REQUIRE(closed.size() == 3);
    CHECK(closed[0].number == 2);
    CHECK(closed[1].number == 2);
    CHECK(closed[2].number == 1);
}

TEST_CASE("unsaved work is asked about before its setup closes") {
    Desk desk;
    change_title(desk);
    desk.key(ImGuiKey_W, {ImGuiMod_Ctrl});
    desk.frame(2);
    CHECK(desk.asked<CloseSetup>().empty());
    REQUIRE(desk.has("unsaved/discard"));
    desk.click("unsaved/cancel");
    desk.frame(2);
    CHECK_FALSE(desk.has("unsaved/discard"));
    CHECK(desk.asked<CloseSetup>().empty());
    desk.key(ImGuiKey_W, {ImGuiMod_Ctrl});
    desk.frame(2);
    desk.click("unsaved/discard");
    CHECK(desk.asked<CloseSetup>().size() == 1);
}

TEST_CASE("a setup that is closed from the row comes into the window to be asked about") {
    Desk desk;
    desk.other_setups = {{2, "Two", "", true}};
    desk.frame(2);
    desk.click("setups/2/close");
    CHECK(desk.asked<CloseSetup>().empty());
    CHECK_FALSE(desk.has("unsaved/discard"));  // the wrong one is shown yet
    CHECK(shown_in_turn(desk).front() == 2);
}

TEST_CASE("quitting asks for every setup with unsaved work, one after the other") {
    Desk desk;
    change_title(desk);
    desk.other_setups = {{2, "Saved", "", false}, {3, "Three", "", true}};
    desk.events.close_asked = true;
    desk.frame(3);
    REQUIRE(desk.has("unsaved/discard"));
    desk.click("unsaved/discard");
    CHECK(desk.asked<Quit>().empty());
    REQUIRE_FALSE(shown_in_turn(desk).empty());
    CHECK(shown_in_turn(desk).front() == 3);
    desk.other_setups.back().modified = false;  // as if it had been saved there
    desk.frame(3);
    CHECK(desk.asked<Quit>().size() == 1);
}

TEST_CASE("many setups keep their row within the window") {
    Desk desk(short_setup(), {800, 600});
    for (std::uint64_t number = 2; number < 20; ++number)
        desk.other_setups.push_back({number, "Setup with a long name", "", number % 2 == 0});
    desk.frame(3);
    CHECK(desk.widget("setups/add").high.x <= 800);
    CHECK(desk.widget("setups/1").low.x >= 0);
    CHECK(desk.widget("setups/1").high.x < desk.widget("setups/add").low.x);
}
