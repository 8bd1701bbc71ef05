#include "ui/picture/moving_view.hpp"
#include "ui/talk/talk.hpp"

namespace beamfork {

namespace {

using TalkAction = KeyedAction<TalkUi>;

// To another step; a black screen is lit again by it.
void go_to_step(const TalkUi& ui, std::size_t step) {
    auto& talk = ui.state.talk;
    if (!talk) return;
    talk->is_black = false;
    if (step >= talk->steps) return;
    const bool is_other = step != talk->step;
    talk->step = step;
    if (!is_other && !talk->is_turned) return;
    if (is_other) {
        talk->is_revealed = false;
        talk->chosen.reset();
        talk->answers = 0;
        talk->reveal_done = 0;
    }
    talk->from = ui.picture.pose.camera;
    talk->emphasis_from = talk->emphasis;
    talk->flight_done = 0;
    talk->is_turned = false;
}

void go_on(const TalkUi& ui) {
    auto& talk = ui.state.talk;
    if (!talk) return;
    const bool is_asking = talk->answers > 0 && !talk->is_revealed && !talk->is_black;
    if (is_asking) {
        talk->is_revealed = true;
    } else {
        go_to_step(ui, talk->step + 1);
    }
}

template <std::size_t number>
void answer_with(const TalkUi& ui) {
    if (ui.state.talk) choose_answer(ui, number - 1);
}

constexpr TalkAction
talk_entry(const char* name, const char* label, Chords chords, void (*run)(const TalkUi&)) {
    return {name, "In a talk", label, chords, Heard::always, false, nullptr, run};
}

constexpr std::array talk_table{
    talk_entry("talk/forward",
               "The next step, or the answer to what the room was asked",
               {{{ImGuiKey_RightArrow}, {ImGuiKey_PageDown}, {ImGuiKey_Space}}},
               go_on),
    talk_entry("talk/back",
               "The step before",
               {{{ImGuiKey_LeftArrow}, {ImGuiKey_PageUp}, {ImGuiKey_Backspace}}},
               [](const TalkUi& ui) {
                   const bool can = ui.state.talk && ui.state.talk->step > 0;
                   if (can) go_to_step(ui, ui.state.talk->step - 1);
               }),
    talk_entry("talk/first",
               "The first step",
               {{{ImGuiKey_Home}}},
               [](const TalkUi& ui) { go_to_step(ui, 0); }),
    talk_entry("talk/answer/1",
               "The room says the first answer",
               {{{ImGuiKey_1}, {ImGuiKey_Keypad1}}},
               answer_with<1>),
    talk_entry("talk/answer/2",
               "The room says the second",
               {{{ImGuiKey_2}, {ImGuiKey_Keypad2}}},
               answer_with<2>),
    talk_entry("talk/answer/3",
               "The room says the third",
               {{{ImGuiKey_3}, {ImGuiKey_Keypad3}}},
               answer_with<3>),
    talk_entry("talk/black",
               "The screen black, or back",
               {{{ImGuiKey_B}, {ImGuiKey_Period}}},
               [](const TalkUi& ui) {
                   if (ui.state.talk) ui.state.talk->is_black = !ui.state.talk->is_black;
               }),
    talk_entry("talk/notes",
               "Notes and time in a window of their own, or not",
               {{{ImGuiKey_S}}},
               [](const TalkUi& ui) {
                   if (ui.state.talk) ui.state.talk->has_notes = !ui.state.talk->has_notes;
               }),
    talk_entry("talk/motion",
               "Light in motion, or steady",
               {{{ImGuiKey_M}}},
               [](const TalkUi& ui) { move_light_or_not(ui.picture); }),
    talk_entry(
        "talk/paint",
        "The objective painted, or not",
        {{{ImGuiKey_P}}},
        [](const TalkUi& ui) { ui.picture.options.paint_pupil = !ui.picture.options.paint_pupil; }),
    talk_entry("talk/apart",
               "The parts pulled apart, or together",
               {{{ImGuiKey_X}}},
               [](const TalkUi& ui) {
                   pull_apart_or_back(ui.picture);
                   if (ui.state.talk) ui.state.talk->is_turned = true;  // the step's own view waits
               }),
    talk_entry("talk/leave", "Leave the talk", {{{ImGuiKey_Escape}, {ImGuiKey_F5}}}, leave_talk),
};

}  // namespace

void choose_answer(const TalkUi& ui, std::size_t answer) {
    auto& talk = ui.state.talk;
    if (!talk || talk->is_revealed || talk->is_black || answer >= talk->answers) return;
    talk->chosen = answer;
    talk->is_revealed = true;
    ui.pace.animating = true;
}

std::span<const TalkAction> talk_actions() { return talk_table; }

void use_talk_keys(const TalkUi& ui) {
    const HeldKeys keys = held_keys(ui.kept.held_before);
    if (keys.ctrl || keys.alt) return;
    const TalkAction* asked = nullptr;
    for (const TalkAction& entry : talk_table) {
        if (is_pressed(entry.chords, 0, entry.repeats)) asked = &entry;
    }
    if (asked == nullptr) return;
    asked->run(ui);
    ui.pace.animating = true;
}

}  // namespace beamfork
