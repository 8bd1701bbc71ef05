// A walk over every widget of the window: has it a name, does it explain itself, does the keyboard reach it?
//
// What is drawn is told by Dear ImGui itself (widget_watch.hpp), not by the interface's own log: a widget that
// logs nothing is found too.
#include <set>

#include "parts/eyepiece_pair.hpp"
#include "parts/splitter_head.hpp"
#include "support/sanitized.hpp"
#include "ui/desk.hpp"
#include "ui/outcome.hpp"
#include "ui/panels.hpp"
#include "ui/shell/splitters.hpp"
#include "ui/widget_watch.hpp"
#include "ui/window_actions.hpp"

using namespace beamfork;

namespace {

constexpr const char* popup_on_top = "popup";

// A state of the window and what is walked in it: the popup on top, or the windows whose names hold `window`;
// empty: all.
struct Place {
    std::string name;
    std::function<void(Desk&)> go;
    std::size_t least = 1;  ///< widgets that stand there, counted by hand in the sources
    std::string window = popup_on_top;
    ImVec2 size{1600, 1300};
};

ImGuiWindow* top_popup() {
    const auto& stack = ImGui::GetCurrentContext()->OpenPopupStack;
    return stack.empty() ? nullptr : stack.back().Window;
}

bool belongs(const Place& place, const ImGuiWindow& window) {
    if (const ImGuiWindow* popup = top_popup())
        return window.RootWindowForNav == popup->RootWindowForNav;
    if (std::string_view(window.Name).starts_with("Debug##")) return false;  // the library's own
    const std::string_view name = window.RootWindow->Name;
    // Coming to a row of the train selects its part: what stands in that panel is walked apart.
    if (place.window.empty() && name.find("###panel/part") != std::string_view::npos) return false;
    return name.find(place.window) != std::string_view::npos;
}

std::vector<DrawnWidget> drawn_at(Desk& desk, const Place& place) {
    desk.frame(2);
    watch_widgets();
    desk.frame();
    std::vector<DrawnWidget> all = watched_widgets();
    std::erase_if(all, [&](const DrawnWidget& one) { return !belongs(place, *one.window); });
    return all;
}

void tap(Desk& desk, ImGuiKey key) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddKeyEvent(key, true);
    desk.frame();
    io.AddKeyEvent(key, false);
    desk.frame();
}

ImGuiID at_keyboard() { return ImGui::GetCurrentContext()->NavId; }

// All that the key comes to, until it comes round.
void go_round(Desk& desk, ImGuiKey key, std::set<ImGuiID>& reached) {
    std::set<ImGuiID> seen;
    do {
        reached.insert(at_keyboard());
        tap(desk, key);
    } while (seen.insert(at_keyboard()).second);
    reached.insert(at_keyboard());
}

std::set<ImGuiID> reached_by_keyboard(Desk& desk, const Place& place) {
    std::set<ImGuiID> reached;
    if (top_popup() != nullptr) {
        go_round(desk, ImGuiKey_Tab, reached);
        go_round(desk, ImGuiKey_DownArrow, reached);
        go_round(desk, ImGuiKey_UpArrow, reached);
        return reached;
    }
    std::set<std::string> stops;
    for (;;) {
        desk.key(ImGuiKey_F6);
        const ImGuiWindow* window = ImGui::GetCurrentContext()->NavWindow;
        REQUIRE(window != nullptr);
        if (!stops.insert(window->Name).second) break;
        if (belongs(place, *window)) go_round(desk, ImGuiKey_Tab, reached);
    }
    if (!place.window.empty()) return reached;
    for (std::size_t i = 0; i < splitter_names.size(); ++i) {
        desk.key(ImGuiKey_F6, {ImGuiMod_Ctrl});
        reached.insert(at_keyboard());
    }
    return reached;
}

// Widgets for the mouse alone, and the action that does the same by a key.
std::string action_instead(const std::string& name) {
    if (name == "picture/canvas" || name == "picture/other") return "view/turn_left";
    if (name == "unfolded/picture") return "part/next";  // selects what is clicked
    if (name.starts_with("handle/")) return "handle/more";
    return {};
}

std::string logged_name(const Desk& desk, ImGuiID id) {
    for (const auto& [name, widget] : desk.log.widgets) {
        if (widget.id == id) return name;
    }
    return {};
}

void walk(const Place& place) {
    CAPTURE(place.name);
    Desk desk(clipping_setup(), place.size);
    place.go(desk);
    const std::vector<DrawnWidget> drawn = drawn_at(desk, place);
    REQUIRE((top_popup() != nullptr) == (place.window == popup_on_top));
    CHECK(drawn.size() >= place.least);
    std::map<ImGuiID, std::string> names;
    for (const DrawnWidget& one : drawn)
        names[one.id] = logged_name(desk, one.id);
    const WidgetLog log = desk.log;
    const std::set<ImGuiID> reached = reached_by_keyboard(desk, place);
    for (const DrawnWidget& one : drawn) {
        const std::string& name = names.at(one.id);
        CAPTURE(name);
        CAPTURE(std::string(one.window->Name));
        CAPTURE(one.area.Min.x);
        CAPTURE(one.area.Min.y);
        CHECK_FALSE(name.empty());
        if (name.empty()) continue;
        CHECK_FALSE(log.widgets.at(name).label.empty());
        CHECK_FALSE(log.widgets.at(name).tooltip.empty());
        const std::string action = action_instead(name);
        if (!action.empty()) CHECK_FALSE(keys_text(action).empty());
        if (action.empty() && one.enabled) CHECK(reached.contains(one.id));
    }
}

Place clicked(const std::string& widget, std::size_t least) {
    return {widget, [widget](Desk& desk) { desk.click(widget); }, least};
}

Place in_study(const std::string& stem, const std::string& widget, std::size_t least) {
    return {stem + ", " + widget,
            [stem, widget](Desk& desk) {
                desk.session.layout.study = stem;
                desk.session.layout.study_is_wide = true;
                desk.frame(3);
                desk.click(widget);
            },
            least};
}

Place keyed(const std::string& name, ImGuiKey key, std::vector<ImGuiKey> held, std::size_t least) {
    return {name,
            [key, held = std::move(held)](Desk& desk) {
                ImGuiIO& io = ImGui::GetIO();
                for (const ImGuiKey modifier : held)
                    io.AddKeyEvent(modifier, true);
                desk.key(key);
                for (const ImGuiKey modifier : held)
                    io.AddKeyEvent(modifier, false);
                desk.frame(3);
            },
            least};
}

}  // namespace

TEST_CASE("every widget of the plain window is named, explained and reached by keyboard") {
    walk({"the window", [](Desk&) {}, 75, ""});
    walk({"the welcome",
          [](Desk& desk) {
              desk.session.welcome_dismissed = false;
              desk.bench.tell({"The disk is full.", true});
              desk.notices = {{12, "'lenght_mm' has no effect; did you mean 'length_mm'?"}};
          },
          2, "notice_bar"});
    walk({"a small window", [](Desk&) {}, 45, "", {800, 600}});
    walk({"several setups",
          [](Desk& desk) {
              desk.other_setups = {{2, "Evening", "", false}, {3, "Noon", "", true}};
          },
          80, ""});
    walk({"all folded",
          [](Desk& desk) {
              for (const PanelEntry& entry : panels())
                  desk.session.layout.folded.insert(entry.is_study() ? "study"
                                                                     : std::string(entry.stem));
          },
          30, ""});
}

TEST_CASE("every widget of every study is named, explained and reached by keyboard") {
    for (const PanelEntry& entry : panels()) {
        for (const bool is_wide : {false, true}) {
            if (!entry.is_study()) continue;
            const std::string stem(entry.stem);
            walk({stem + (is_wide ? ", wide" : ""),
                  [stem, is_wide](Desk& desk) {
                      desk.session.layout.study = stem;
                      desk.session.layout.study_is_wide = is_wide;
                      desk.session.findings.shows_all = true;
                      desk.session.layout.strip_height = 40;  // an entry out of sight logs nothing
                      desk.comparison.choices = {
                          {"first", "As opened", "The setup as it was opened."}};
                      desk.frame(3);
                      if (stem != "tours") return;
                      desk.click("tours/new");
                      desk.click("tours/new/view");
                  },
                  4, "###panel/" + stem});
        }
    }
}

TEST_CASE("every field of every part is named, explained and reached by keyboard") {
    const std::size_t count = clipping_setup().parts.size();
    for (std::size_t part = 0; part < count; ++part) {
        walk({"part " + std::to_string(part), [part](Desk& desk) { desk.select(part); }, 4,
              "###panel/part"});
    }
    walk({"the setup's words", [](Desk&) {}, 3, "###panel/part"});
    walk({"the story", [](Desk& desk) { desk.click("setup/edit_story"); }, 4, "###panel/part"});
}

TEST_CASE("every line of every menu and list is named, explained and reached by keyboard") {
    for (const Place& place :
         {clicked("file/menu", 11), clicked("view/more", 8), clicked("choose/eyepiece", 1),
          clicked("choose/observer", 1), clicked("choose/target", 1), clicked("train/add", 12),
          clicked("study", 14), in_study("tune", "tune/varied", 5),
          in_study("tune", "tune/watched", 5), in_study("home_measurement", "measurement", 5),
          in_study("tours", "tours/new", 3), in_study("sight_view", "sight/subject", 3)}) {
        walk(place);
    }
    walk({"the list of tubes",
          [](Desk& desk) { desk.click("view/shells"); },
          4,
          popup_on_top,
          {800, 600}});
    walk({"what else is drawn in a small window",
          [](Desk& desk) { desk.click("view/more"); },
          8,
          popup_on_top,
          {480, 400}});
    walk({"the menu of views",
          [](Desk& desk) { desk.click("view/menu"); },
          6,
          popup_on_top,
          {800, 600}});
    walk({"what else is drawn, at night and cut",
          [](Desk& desk) {
              desk.session.view.night = true;
              desk.session.view.shells = ShellView::section;
              desk.frame(2);
              desk.click("view/more");
          },
          7});
    walk({"what else is drawn, with light in motion",
          [](Desk& desk) {
              desk.session.view.light_moves = true;
              desk.frame(2);
              desk.click("view/more");
          },
          10});
    walk({"all changes",
          [](Desk& desk) {
              desk.select(desk.index<SplitterHead>());
              desk.retype("part/name", "Our head");
              desk.click("edit/steps");
          },
          2});
    walk({"another setup to compare with",
          [](Desk& desk) {
              desk.comparison.choices = {{"first", "As opened", "The setup as it was opened."}};
              desk.session.layout.study = "comparison";
              desk.frame(3);
              desk.click("comparison/other");
          },
          1});
}

TEST_CASE("every widget of every dialog is named, explained and reached by keyboard") {
    constexpr ImGuiKey ctrl = ImGuiMod_Ctrl;
    constexpr ImGuiKey shift = ImGuiMod_Shift;
    for (const Place& place :
         {keyed("describe my setup", ImGuiKey_N, {ctrl, shift}, 15),
          keyed("open", ImGuiKey_O, {ctrl}, 6), keyed("save as", ImGuiKey_S, {ctrl, shift}, 6),
          keyed("keys", ImGuiKey_F1, {}, 1), keyed("glossary", ImGuiKey_F1, {shift}, 2),
          keyed("a talk", ImGuiKey_F5, {}, 3), clicked("status/cautions", 1),
          clicked("status/assumptions", 1)}) {
        walk(place);
    }
    for (const char* kind : {"Sheet", "Picture", "Model", "Film"}) {
        walk({std::string("take it with you: ") + kind,
              [kind](Desk& desk) {
                  desk.key(ImGuiKey_E, {ImGuiMod_Ctrl});
                  desk.frame(2);
                  desk.click(std::string("export/kind/") + kind);
              },
              9});
    }
    walk({"start page",
          [](Desk& desk) {
              desk.demos = {{"One", "A story.", "one.train.toml"},
                            {"Two", "Another.", "two.train.toml"}};
              desk.bench.recent_files = {"/home/club/evening.train.toml"};
              desk.key(ImGuiKey_Home, {ImGuiMod_Alt});
              desk.frame(3);
          },
          6});
    walk({"unsaved changes",
          [](Desk& desk) {
              desk.select(desk.index<SplitterHead>());
              desk.retype("part/name", "Our head");
              desk.events.close_asked = true;
              desk.frame(3);
          },
          3});
    walk({"unsaved work was found",
          [](Desk& desk) {
              desk.lost_work = {{"Evening on the hill", ""}};
              desk.frame(3);
          },
          3});
}

namespace {

// A slider is dragged by the mouse and moved by the arrows.
bool is_slider(const std::string& name) {
    return name.ends_with("/slider") || name == "sight/closer";
}

// In a desk that is brought back to its beginning each time.
class TwoWays {
public:
    explicit TwoWays(std::function<void(Desk&)> go) : go_(std::move(go)) { begin(); }

    void compare(const std::string& name, const std::string& window, ImGuiID id) {
        CAPTURE(name);
        begin();
        const std::string before = outcome(*desk_);
        desk_->click(name);
        desk_->frame(12);
        const std::string clicked = outcome(*desk_);
        begin();
        give_keyboard(window.c_str(), id);
        if (is_slider(name)) {
            tap(*desk_, ImGuiKey_Space);
            tap(*desk_, ImGuiKey_RightArrow);
            CHECK((outcome(*desk_) != before));
            return;
        }
        tap(*desk_, ImGuiKey_Space);
        desk_->move({1, 1});
        desk_->frame(12);
        CHECK((outcome(*desk_) == clicked));
        if (clicked != before) ++doing;
    }
    Desk& desk() { return *desk_; }
    int doing = 0;  ///< widgets by which something happens

private:
    void begin() {
        desk_.reset();
        desk_ = std::make_unique<Desk>(clipping_setup(), ImVec2{1900, 2000});
        go_(*desk_);
        desk_->move({1, 1});
        desk_->frame(2);
    }
    void give_keyboard(const char* window_name, ImGuiID id) {
        ImGuiWindow* window = ImGui::FindWindowByName(window_name);
        ImGui::FocusWindow(window);
        ImGui::SetNavID(id, ImGuiNavLayer_Main, window->NavRootFocusScopeId, ImRect());
        ImGui::GetCurrentContext()->NavDisableHighlight = false;
        desk_->frame(2);
    }

    std::function<void(Desk&)> go_;
    std::unique_ptr<Desk> desk_;
};

}  // namespace

TEST_CASE("whatever a click on a widget does, Space does too") {
    const auto wide = [](const std::string& stem) {
        return [stem](Desk& desk) {
            desk.session.layout.study = stem;
            desk.session.layout.study_is_wide = !stem.empty();
            desk.session.layout.strip_height = 40;  // so that nothing is out of sight
            desk.frame(3);
        };
    };
    std::vector<Place> places{{"the window", wide(""), 75, ""},
                              {"a part",
                               [](Desk& desk) { desk.select(desk.index<EyepiecePair>()); }, 20,
                               "###panel/part"}};
    for (const char* stem : {"unfolded_path", "ways_to_focus", "uncertainty", "tune", "sight_view",
                             "brightness", "alignment"})
        places.push_back({stem, wide(stem), 4, std::string("###panel/") + stem});
    int doing = 0;
    for (const Place& place : places) {
        CAPTURE(place.name);
        TwoWays ways(place.go);
        struct Walked {
            std::string name;
            std::string window;
            ImGuiID id;
        };
        std::vector<Walked> walked;
        for (const DrawnWidget& one : drawn_at(ways.desk(), place))
            walked.push_back({logged_name(ways.desk(), one.id), one.window->Name, one.id});
        CHECK(walked.size() >= place.least);
        for (std::size_t i = 0; i < walked.size(); i += test_effort::one_of) {
            const Walked& one = walked[i];
            if (action_instead(one.name).empty() && !one.name.starts_with("splitter/"))
                ways.compare(one.name, one.window, one.id);
        }
        doing += ways.doing;
    }
    CHECK(doing >= 80 / static_cast<int>(test_effort::one_of));
}

namespace {

// Whether a line of the keyboard's colour is drawn round the widget that has it, just outside.
bool is_framed(const ImGuiWindow& window) {
    const ImRect at =
        ImGui::WindowRectRelToAbs(const_cast<ImGuiWindow*>(&window),  // NOLINT: it only reads
                                  window.NavRectRel[ImGuiNavLayer_Main]);
    ImRect near = at;
    near.Expand(grid(1.5F));
    bool above = false;
    bool below = false;
    for (const ImDrawVert& corner : window.DrawList->VtxBuffer) {
        if (corner.col != colour(Tone::accent) || !near.Contains(corner.pos)) continue;
        above |= corner.pos.y < at.Min.y;
        below |= corner.pos.y > at.Max.y;
    }
    return above && below;
}

}  // namespace

TEST_CASE("the widget that has the keyboard is framed, and no other, until the mouse is used") {
    Desk desk(clipping_setup());
    desk.session.layout.strip_height = 40;
    const ImGuiContext& context = *ImGui::GetCurrentContext();
    int framed = 0;
    for (int stop = 0; stop < 10; ++stop) {
        desk.key(ImGuiKey_F6);
        for (int i = 0; i < 3; ++i) {
            if (context.NavId != 0) {
                CAPTURE(std::string(context.NavWindow->Name));
                CAPTURE(logged_name(desk, context.NavId));
                CHECK(is_framed(*context.NavWindow));
                ++framed;
            }
            tap(desk, ImGuiKey_Tab);
        }
    }
    CHECK(framed >= 24);
    // 3 to 1 for what shows the keyboard's place: WCAG 2.2, success criterion 1.4.11.
    for (const Tone ground : {Tone::ground, Tone::panel, Tone::raised, Tone::raised_hot})
        CHECK(contrast(srgb_hex(Tone::accent), srgb_hex(ground)) >= 3);
    desk.key(ImGuiKey_F6);
    desk.move({800, 400});
    desk.move({810, 410});
    CHECK_FALSE(ImGui::GetIO().NavVisible);
}
