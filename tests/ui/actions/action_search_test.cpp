#include <set>

#include "parts/splitter_head.hpp"
#include "ui/actions/action_search.hpp"
#include "ui/desk.hpp"
#include "ui/window_actions.hpp"

using namespace beamfork;

TEST_CASE("every action has a name, a label and something to do, and no key does two things") {
    std::set<std::string> names;
    std::set<std::string> labels;
    std::set<std::pair<int, int>> chords;
    for_each_action([&](const ActionEntry& entry) {
        CAPTURE(entry.name);
        CHECK(names.insert(entry.name).second);
        CHECK(labels.insert(entry.label).second);
        REQUIRE((entry.run != nullptr));
        for (const Chord& chord : entry.chords) {
            if (chord.key != ImGuiKey_None) CHECK(chords.insert({chord.key, chord.held}).second);
        }
    });
    const Desk desk;  // the library names keys only while it runs
    CHECK(keys_text("setup/save_as") == "Ctrl+Shift+S");
    CHECK(keys_text("part/up") == "Alt+Up");
    CHECK_THROWS(keys_text("no/such"));
}

TEST_CASE("a few letters and Enter run an action") {
    Desk desk;
    CHECK_FALSE(desk.session.view.night);
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    REQUIRE(desk.has("search/typed"));
    desk.type("red li");
    desk.key(ImGuiKey_Enter);
    CHECK(desk.session.view.night);
    CHECK_FALSE(desk.has("search/typed"));
    desk.key(ImGuiKey_R);  // the keyboard is back where it was
    CHECK_FALSE(desk.session.view.night);
}

TEST_CASE("parts are selected and added by name, the study is chosen by name") {
    Desk desk;
    const std::size_t head = desk.index<SplitterHead>();
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("select " + desk.setup().parts[head].name);
    desk.key(ImGuiKey_Enter);
    CHECK(desk.session.pose.selected_part == head);
    const std::size_t before = desk.setup().parts.size();
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("add filter");
    desk.key(ImGuiKey_Enter);
    REQUIRE(desk.setup().parts.size() == before + 1);
    CHECK(kind_of(desk.setup().parts[*desk.session.pose.selected_part].body).key == "filter");
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("show brightness");
    desk.key(ImGuiKey_Enter);
    CHECK(desk.session.layout.study == "brightness");
}

TEST_CASE("arrow keys choose, a click runs, Escape changes nothing") {
    Desk desk;
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("tubes");
    desk.key(ImGuiKey_DownArrow);
    desk.key(ImGuiKey_Enter);
    CHECK(desk.session.view.shells == ShellView::whole);
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("tubes");
    desk.click("search/view/shells/hidden");
    CHECK(desk.session.view.shells == ShellView::hidden);
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("tubes open");
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("search/typed"));
    CHECK(desk.session.view.shells == ShellView::hidden);
}

TEST_CASE("what cannot be done now stands behind what can and does nothing") {
    Desk desk;
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("undo");
    desk.key(ImGuiKey_Enter);
    CHECK(desk.asked<Undo>().empty());
    CHECK(desk.has("search/typed"));
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("no such thing at all");
    desk.key(ImGuiKey_Enter);
    CHECK(desk.has("search/typed"));
}

TEST_CASE("the page of keys names every key of the table") {
    Desk desk;
    desk.key(ImGuiKey_F1);
    REQUIRE(desk.has("keys/close"));
    for_each_action([&](const ActionEntry& entry) {
        CAPTURE(entry.name);
        const std::string row = std::string("keys/") + entry.label;
        if (entry.chords.front().key == ImGuiKey_None) return;
        REQUIRE(desk.has(row));
        CHECK(desk.widget(row).tooltip.find(keys_text(entry)) != std::string::npos);
    });
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("keys/close"));
}

TEST_CASE("a panel that was folded is shown and given the keyboard by its name") {
    Desk desk;
    desk.session.layout.folded.insert("train");
    desk.frame(2);
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("show the train");
    desk.key(ImGuiKey_Enter);
    desk.frame(2);
    CHECK_FALSE(desk.session.layout.folded.contains("train"));
    const ImGuiWindow* focused = ImGui::GetCurrentContext()->NavWindow;
    REQUIRE(focused != nullptr);
    CHECK(std::string(focused->RootWindow->Name).find("panel/train") != std::string::npos);
}
