// The window draws nothing while nothing happens: frames are counted on a clock of our own.
#include "app/window/frame_clock.hpp"
#include "parts/splitter_head.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"
#include "ui/panels.hpp"

using namespace beamfork;

namespace {

// As the window's loop does, with a clock that counts what it would have slept.
class Evening {
public:
    explicit Evening(Desk& desk) : desk_(desk) {}

    /// Draws until `seconds` have passed or nothing would ever wake the window again.
    void pass(double seconds) {
        frames = 0;
        rests = false;
        for (double now = 0; now < seconds && frames < 5000;) {
            const FramePause pause =
                clock_.before_next_frame(ImGui::GetIO().WantTextInput, desk_.last.pace.wake_in_s);
            if (pause.sleeps && !pause.at_most_s) {
                rests = true;
                return;
            }
            const double slept = pause.sleeps ? *pause.at_most_s : 1.0 / 60;
            if (now + slept > seconds) return;
            now += slept;
            ImGui::GetIO().DeltaTime = static_cast<float>(slept);
            desk_.frame();
            ++frames;
            const bool is_busy = desk_.last.pace.animating || !desk_.last.desk.commands.empty()
                                 || ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
            if (is_busy) clock_.keep_going();
        }
    }
    int frames = 0;
    bool rests = false;  ///< only an event draws a frame

private:
    Desk& desk_;
    FrameClock clock_;
};

constexpr double settling_s =
    5;  // a flight of the camera takes half a second, a tooltip's delay 0.35 s

}  // namespace

TEST_CASE("after an event three frames are drawn, then none until something happens") {
    FrameClock clock;
    for (int event = 0; event < 3; ++event) {
        for (int i = 0; i < FrameClock::frames_after_event; ++i)
            CHECK_FALSE(clock.before_next_frame(false, {}).sleeps);
        const FramePause pause = clock.before_next_frame(false, {});
        CHECK(pause.sleeps);
        CHECK_FALSE(pause.at_most_s.has_value());
    }
}

TEST_CASE("what is wanted later wakes the window then, a text caret twice a second or so") {
    FrameClock clock;
    const auto slept = [&](bool is_typing, std::optional<double> wake) {
        FramePause pause;
        do {
            pause = clock.before_next_frame(is_typing, wake);
        } while (!pause.sleeps);
        return pause.at_most_s.value();
    };
    CHECK(near(slept(false, 2.5), 2.5, rounding));
    CHECK(near(slept(true, {}), 0.4, rounding));
    CHECK(near(slept(true, 0.1), 0.1, rounding));
    clock.keep_going();
    CHECK_FALSE(clock.before_next_frame(false, {}).sleeps);
}

TEST_CASE("once everything has settled no frame is drawn in an hour, whatever study is shown") {
    for (const PanelEntry& entry : panels()) {
        if (!entry.is_study()) continue;
        CAPTURE(std::string(entry.stem));
        Desk desk(clipping_setup());
        desk.session.layout.study = std::string(entry.stem);
        Evening evening(desk);
        evening.pass(settling_s);
        CHECK(evening.frames >= FrameClock::frames_after_event);
        CHECK(evening.rests);
        evening.pass(3600);
        CHECK(evening.frames <= FrameClock::frames_after_event);
        CHECK(evening.rests);
    }
}

TEST_CASE("with a question, a menu or a page open the window rests too") {
    const std::vector<std::function<void(Desk&)>> states{
        [](Desk& desk) { desk.click("file/menu"); },
        [](Desk& desk) { desk.click("view/more"); },
        [](Desk& desk) { desk.click("choose/target"); },
        [](Desk& desk) { desk.key(ImGuiKey_F1); },
        [](Desk& desk) { desk.key(ImGuiKey_E, {ImGuiMod_Ctrl}); },
        [](Desk& desk) { desk.key(ImGuiKey_F5); },
        [](Desk& desk) { desk.key(ImGuiKey_F6); },
        [](Desk& desk) { desk.select(desk.index<SplitterHead>()); },
        [](Desk& desk) { desk.session.view.night = true; },
        [](Desk& desk) { desk.key(ImGuiKey_2); },
        [](Desk& desk) { desk.move(desk.place("view/side")); }};
    for (std::size_t i = 0; i < states.size(); ++i) {
        CAPTURE(i);
        Desk desk(clipping_setup());
        states[i](desk);
        Evening evening(desk);
        evening.pass(settling_s);
        CHECK(evening.rests);
        evening.pass(3600);
        CHECK(evening.frames <= FrameClock::frames_after_event);
    }
}

TEST_CASE("a tooltip comes while the pointer rests, though no event draws a frame") {
    Desk desk(clipping_setup());
    Evening evening(desk);
    evening.pass(settling_s);
    const auto tooltips = [] {
        int shown = 0;
        for (const ImGuiWindow* window : ImGui::GetCurrentContext()->Windows)
            shown += window->Active && (window->Flags & ImGuiWindowFlags_Tooltip) != 0 ? 1 : 0;
        return shown;
    };
    CHECK(tooltips() == 0);
    const ImVec2 at = desk.place("view/side");
    ImGui::GetIO().AddMousePosEvent(at.x, at.y);
    evening.pass(settling_s);
    CHECK(tooltips() == 1);
    CHECK(evening.rests);
}

TEST_CASE("in a talk the notes' clock wakes the window once a second, and nothing else does") {
    Desk desk(clipping_setup());
    desk.key(ImGuiKey_F5);
    desk.key(ImGuiKey_Enter);
    Evening evening(desk);
    evening.pass(settling_s);
    evening.pass(60);
    CHECK(evening.rests);  // without notes
    desk.key(ImGuiKey_S);
    evening.pass(settling_s);
    evening.pass(60);
    CHECK_FALSE(evening.rests);
    CHECK(evening.frames <= 61 * (1 + FrameClock::frames_after_event));
}
