// The page that an empty start shows.
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

DemoEntry demo_called(const std::string& name) {
    return {
        name, "What is to be seen in " + name + ".", "assets/demos/" + name + ".train.toml", {}};
}

}  // namespace

TEST_CASE("an empty start shows the start page, and Escape leaves the setup that is open") {
    Desk desk;
    CHECK_FALSE(desk.has("start/close"));
    desk.events.starts_empty = true;
    desk.frame(3);
    REQUIRE(desk.has("start/close"));
    CHECK(desk.last.files.wants_demo_pictures);
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("start/close"));
    CHECK_FALSE(desk.last.files.wants_demo_pictures);
    CHECK(desk.commands.empty());
}

TEST_CASE("a demo is opened by its card, with the mouse or by keyboard") {
    Desk desk;
    ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;  // as the window does
    for (const char* name : {"one", "two", "three", "four", "five"})
        desk.demos.push_back(demo_called(name));
    desk.key(ImGuiKey_Home, {ImGuiMod_Alt});
    desk.frame(2);
    for (const DemoEntry& demo : desk.demos)
        CHECK(desk.widget("start/demo/" + demo.asset).tooltip == demo.story);
    desk.click("start/demo/assets/demos/four.train.toml");
    REQUIRE(desk.asked<OpenDemo>().size() == 1);
    CHECK(desk.asked<OpenDemo>().front().asset == "assets/demos/four.train.toml");
    CHECK_FALSE(desk.has("start/close"));

    desk.key(ImGuiKey_Home, {ImGuiMod_Alt});
    desk.frame(2);
    desk.key(ImGuiKey_RightArrow);
    desk.key(ImGuiKey_RightArrow);
    desk.key(ImGuiKey_Enter);
    REQUIRE(desk.asked<OpenDemo>().size() == 2);
    CHECK(desk.asked<OpenDemo>().back().asset != "assets/demos/four.train.toml");
}

TEST_CASE("the start page leads to one's own setup: questions, a file, one opened lately") {
    Desk desk;
    desk.bench.recent_files = {"/home/club/evening.train.toml"};
    const auto open = [&] {
        desk.click("file/menu");
        desk.click("file/start_page");
        desk.frame(2);
    };
    open();
    desk.click("start/describe");
    desk.frame(2);
    REQUIRE(desk.has("describe/make"));
    desk.key(ImGuiKey_Escape);
    desk.frame(2);
    open();
    desk.click("start/open");
    desk.frame(2);
    CHECK(desk.transient.state().files.file_dialog.has_value());
    desk.key(ImGuiKey_Escape);
    desk.frame(2);
    open();
    desk.click("start/recent/evening.train.toml");
    REQUIRE(desk.asked<OpenFile>().size() == 1);
    CHECK(desk.asked<OpenFile>().front().path == "/home/club/evening.train.toml");
}

TEST_CASE("the start page stays within small windows") {
    for (const ImVec2 size : {ImVec2{800, 600}, ImVec2{640, 480}, ImVec2{1280, 720}}) {
        Desk desk(short_setup(), size);
        for (const char* name : {"one", "two", "three", "four", "five"})
            desk.demos.push_back(demo_called(name));
        desk.events.starts_empty = true;
        desk.frame(4);
        const LoggedWidget& close = desk.widget("start/close");
        CHECK(close.low.x >= 0);
        CHECK(close.high.y <= size.y);
        CHECK(desk.widget("start/describe").low.y >= 0);
    }
}
