#include "parts/spacer.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("another eyepiece pair is chosen at the top and in the list") {
    Desk desk;
    const std::size_t first = desk.setup().chosen.eyepiece;
    const auto added = apply(*desk.history().document(), DuplicatePart{first});
    REQUIRE(added.has_value());
    desk.put(added->setup);
    desk.frame(2);
    desk.click("choose/eyepiece");
    desk.click("choose/eyepiece/" + std::to_string(first + 1));
    CHECK(desk.setup().chosen.eyepiece == first + 1);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(desk.setup().chosen.eyepiece == first);
    desk.double_click("train/row/" + std::to_string(first + 1));
    CHECK(desk.setup().chosen.eyepiece == first + 1);
    desk.click("train/row/" + std::to_string(first));
    desk.click("train/use");
    CHECK(desk.setup().chosen.eyepiece == first);
}

TEST_CASE("undo and redo say what they would do and rest while there is nothing to do") {
    Desk desk;
    CHECK_FALSE(desk.widget("edit/undo").enabled);
    desk.select(desk.index<Spacer>());
    desk.retype("field/length_mm/entry", "5");
    CHECK(desk.widget("edit/undo").enabled);
    CHECK(desk.widget("edit/undo").tooltip.find(desk.history().undo_label()) != std::string::npos);
    CHECK_FALSE(desk.widget("edit/redo").enabled);
    desk.click("edit/undo");
    CHECK(desk.widget("edit/redo").enabled);
    desk.click("edit/redo");
    CHECK(desk.the<Spacer>().length.value == 5);
}

TEST_CASE("the name says whether there is unsaved work") {
    Desk desk;
    CHECK(desk.widget("file/name").tooltip.find("Changed since") == std::string::npos);
    desk.select(desk.index<Spacer>());
    desk.retype("field/length_mm/entry", "5");
    CHECK(desk.widget("file/name").tooltip.find("Changed since") != std::string::npos);
}

TEST_CASE("text grows and shrinks within bounds by button and key") {
    Desk desk;
    desk.click("text/larger");
    CHECK(desk.session.layout.text_scale > 1.05F);
    desk.key(ImGuiKey_0, {ImGuiMod_Ctrl});
    CHECK(desk.session.layout.text_scale == 1);
    for (int i = 0; i < 40; ++i)
        desk.key(ImGuiKey_Equal, {ImGuiMod_Ctrl});
    CHECK(desk.session.layout.text_scale <= 3);
    for (int i = 0; i < 80; ++i)
        desk.key(ImGuiKey_Minus, {ImGuiMod_Ctrl});
    CHECK(desk.session.layout.text_scale >= 0.75F);
}

TEST_CASE("an example is opened from the menu") {
    Desk desk;
    desk.demos = {{"Short of focus", "It fails by a few cm.", "assets/demos/a.train.toml"}};
    desk.click("file/menu");
    const ImVec2 recent = desk.place("file/open_menu");
    const float step = desk.place("file/open_menu").y - desk.place("file/questions").y;
    desk.move({recent.x, recent.y + 2 * step});  // the line below "Opened lately"
    ImGui::GetIO().DeltaTime = 0.5F;
    desk.frame(3);
    ImGui::GetIO().DeltaTime = 1 / 60.0F;
    REQUIRE(desk.has("file/example/assets/demos/a.train.toml"));
    desk.click("file/example/assets/demos/a.train.toml");
    REQUIRE(desk.asked<OpenDemo>().size() == 1);
    CHECK(desk.asked<OpenDemo>().front().asset == "assets/demos/a.train.toml");
}

TEST_CASE(
    "a file that is dropped on the window is opened, beside unsaved work without a question") {
    Desk desk;
    desk.events.dropped_file = "/home/club/evening.train.toml";
    desk.frame(2);
    REQUIRE(desk.asked<OpenFile>().size() == 1);
    CHECK(desk.asked<OpenFile>().front().path == "/home/club/evening.train.toml");
    desk.select(desk.index<Spacer>());
    desk.retype("field/length_mm/entry", "5");
    desk.events.dropped_file = "/home/club/other.train.toml";
    desk.frame(3);
    CHECK(desk.asked<OpenFile>().size() == 2);
    CHECK_FALSE(desk.has("unsaved/discard"));
}

TEST_CASE("a duplicate is asked for by key") {
    Desk desk;
    desk.key(ImGuiKey_D, {ImGuiMod_Ctrl, ImGuiMod_Shift});
    CHECK(desk.asked<DuplicateSetup>().size() == 1);
}
