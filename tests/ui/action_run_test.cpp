// Every action of the tables is run: by its key and by its name, and does something that can be seen.
#include "parts/eyepiece_pair.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "support/sanitized.hpp"
#include "ui/actions/action_search.hpp"
#include "ui/desk.hpp"
#include "ui/outcome.hpp"
#include "ui/window_actions.hpp"

using namespace beamfork;

namespace {

// An eyepiece pair that is not looked through, so that another can be chosen.
Setup setup_with_two_pairs() {
    Setup setup = clipping_setup();
    setup.parts.insert(setup.parts.begin() + 6, Part{"15 mm pair", EyepiecePair{}, {}, {}});
    return with_valid_choice(setup);
}

// In which every action but Redo can be done.
void make_all_possible(Desk& desk, const std::string& name) {
    const bool is_handle = name.starts_with("handle/");
    if (name == "part/use") desk.select(6);
    if (name == "part/up") desk.select(desk.index<MirrorDiagonal>());
    if (name == "part/down" || name == "part/remove" || name == "part/duplicate" || is_handle)
        desk.select(desk.index<Spacer>());
    if (name == "part/rename" || name == "view/frame") desk.select(desk.index<SplitterHead>());
    if (name == "part/before" || name == "part/next") desk.select(2);
    if (name == "view/shells/open") desk.session.view.shells = ShellView::whole;
    if (name == "view/hold_light") desk.session.view.light_moves = true;
    if (name == "view/overview") desk.session.pose.camera.yaw_rad += 1;
    if (name == "window/usual_text") desk.session.layout.text_scale = 1.5F;
    if (name == "setup/describe") desk.select(1);
    if (name == "setup/next" || name == "setup/before")
        desk.other_setups = {{2, "Evening", "", false}};
    const bool needs_history =
        name == "setup/undo" || name == "setup/redo" || name == "setup/steps";
    if (needs_history) {
        desk.select(1);
        desk.retype("part/name", "Our focuser");
    }
    if (name == "setup/redo") desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    ImGui::SetWindowFocus("picture");
    desk.frame(40);  // flights of the camera have ended
}

std::string seen(Desk& desk, const std::string& name) {
    const bool is_about_keyboard =
        name == "window/next_panel" || name == "window/panel_before" || name == "window/gap";
    return outcome(desk) + camera_outcome(desk.session.pose.camera)
           + (is_about_keyboard ? keyboard_outcome() : "");
}

void press_chord(Desk& desk, const Chord& chord) {
    ImGuiIO& io = ImGui::GetIO();
    const std::array<int, 3> modifiers{ImGuiMod_Ctrl, ImGuiMod_Shift, ImGuiMod_Alt};
    for (const int modifier : modifiers)
        if ((chord.held & modifier) != 0) io.AddKeyEvent(static_cast<ImGuiKey>(modifier), true);
    desk.key(chord.key);
    for (const int modifier : modifiers)
        io.AddKeyEvent(static_cast<ImGuiKey>(modifier), false);
    desk.frame(40);
}

// Types its label into the box that finds actions; returns whether it stood first.
bool run_by_name(Desk& desk, const std::string& name, const std::string& label) {
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type(label);
    float top = 1e9F;
    std::string first;
    for (const auto& [widget, at] : desk.log.widgets) {
        if (!widget.starts_with("search/") || widget == "search/typed" || at.low.y >= top) continue;
        top = at.low.y;
        first = widget;
    }
    desk.key(ImGuiKey_Enter);
    desk.frame(40);
    CHECK_FALSE(desk.has("search/typed"));  // it has run, and the box is gone
    return first == "search/" + name;
}

void check_undo(Desk& desk, const Setup& before) {
    if (desk.edits.empty()) return;
    CHECK_FALSE((desk.setup() == before));
    desk.undo();
    CHECK((desk.setup() == before));
}

}  // namespace

TEST_CASE("every key does something that can be seen, and Undo takes back what it changed") {
    int run = 0;
    std::size_t met = 0;
    for_each_action([&](const ActionEntry& entry) {
        if (met++ % test_effort::one_of != 0) return;
        const std::string name = entry.name;
        CAPTURE(name);
        for (const Chord& chord : entry.chords) {
            if (chord.key == ImGuiKey_None) continue;
            Desk desk(setup_with_two_pairs());
            make_all_possible(desk, name);
            desk.edits.clear();
            const Setup before = desk.setup();
            const std::string shown = seen(desk, name);
            press_chord(desk, chord);
            CHECK((seen(desk, name) != shown));
            check_undo(desk, before);
            ++run;
        }
    });
    CHECK(run >= 63 / static_cast<int>(test_effort::one_of));
}

TEST_CASE("every action is found first by its own words, and does the same as its key") {
    int run = 0;
    std::size_t met = 0;
    for_each_action([&](const ActionEntry& entry) {
        if (met++ % test_effort::one_of != 0) return;
        const std::string name = entry.name;
        CAPTURE(name);
        if (name == "window/find") return;  // it is the box itself
        Desk desk(setup_with_two_pairs());
        make_all_possible(desk, name);
        desk.edits.clear();
        const Setup before = desk.setup();
        const std::string shown = seen(desk, name);
        CHECK(run_by_name(desk, name, entry.label));
        CHECK((seen(desk, name) != shown));
        check_undo(desk, before);
        ++run;
    });
    CHECK(run >= 50 / static_cast<int>(test_effort::one_of));
}

TEST_CASE("parts, panels, examples and recent files are found and run by name") {
    Desk first(setup_with_two_pairs());
    const std::vector<DemoEntry> demos{{"One", "A story.", "assets/demos/one.train.toml"}};
    std::vector<Action> actions;
    {
        first.key(ImGuiKey_K, {ImGuiMod_Ctrl});
        for (const auto& [widget, at] : first.log.widgets) {
            if (widget.starts_with("search/part/") || widget.starts_with("search/panel/"))
                actions.push_back({widget.substr(7), "", at.label, "", "", true, nullptr});
        }
    }
    CHECK(actions.size() >= 35);
    for (const Action& action : actions) {
        CAPTURE(action.name);
        if (action.name.starts_with("part/") && !action.name.starts_with("part/add/")
            && !action.name.starts_with("part/select/"))
            continue;                                // of the table
        if (action.name.starts_with("part/add/")) {  // a setup has one telescope
            const AddPart added{action.name.substr(9), {}};
            if (!apply(Document{setup_with_two_pairs(), {}, {}, {}}, added)) continue;
        }
        Desk desk(setup_with_two_pairs());
        desk.session.layout.folded = {"findings",     "train",          "part",
                                      "focus_budget", "light_at_stops", "study"};
        desk.frame(2);
        const Setup before = desk.setup();
        const std::string shown = seen(desk, action.name);
        CHECK(run_by_name(desk, action.name, action.label));
        CHECK((seen(desk, action.name) != shown));
        check_undo(desk, before);
    }
    Desk desk;
    desk.demos = demos;
    CHECK(run_by_name(desk, "setup/example/" + demos[0].asset, demos[0].title));
    CHECK(desk.asked<OpenDemo>().size() == 1);
}

TEST_CASE("an action that cannot be done says what is missing, and nothing happens") {
    Setup broken = short_setup();
    std::erase_if(broken.parts, [](const Part& part) { return part.body.is<SplitterHead>(); });
    int idle = 0;
    for_each_action([&](const ActionEntry& entry) {
        if (entry.can == nullptr) {
            CHECK(std::string(entry.why_not).empty());
            return;
        }
        const std::string name = entry.name;
        CAPTURE(name);
        CHECK(std::string(entry.why_not).size() > 10);
        if (name == "part/before" || name == "part/next") return;  // a setup has parts
        Desk desk(with_valid_choice(broken));
        ImGui::SetWindowFocus("picture");
        desk.frame(2);
        const std::string shown = seen(desk, name);
        const Chord& chord = entry.chords.front();
        if (chord.key != ImGuiKey_None) press_chord(desk, chord);
        CHECK((seen(desk, name) == shown));
        desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
        desk.type(entry.label);
        REQUIRE(desk.has("search/" + name));
        CHECK(desk.widget("search/" + name).tooltip == entry.why_not);
        ++idle;
    });
    CHECK(idle >= 10);
}

TEST_CASE("every key of a talk does something in a talk") {
    int run = 0;
    for (const auto& entry : talk_actions()) {
        for (const Chord& chord : entry.chords) {
            if (chord.key == ImGuiKey_None) continue;
            CAPTURE(std::string(entry.name));
            Desk desk(clipping_setup());
            desk.key(ImGuiKey_F5);
            desk.key(ImGuiKey_Enter);
            REQUIRE(desk.transient.is_giving_talk());
            // Answers are given where the tour asks, at its last step.
            const bool is_answer = std::string_view(entry.name).starts_with("talk/answer/");
            for (int steps = is_answer ? 4 : 1; steps > 0; --steps)
                desk.key(ImGuiKey_RightArrow);
            desk.frame(150);
            const auto told = [&] {
                const auto& talk = desk.transient.state().talk.talk;
                return !talk ? std::string("over")
                             : std::to_string(talk->step) + std::to_string(talk->is_black)
                                   + std::to_string(talk->has_notes)
                                   + std::to_string(talk->chosen.value_or(9))
                                   + view_outcome(desk.session.view);
            };
            const std::string before = told();
            press_chord(desk, chord);
            CHECK(told() != before);
            CHECK(desk.edits.empty());
            ++run;
        }
    }
    CHECK(run >= 12);
}
