#include "ui/action.hpp"
#include "ui/talk.hpp"

namespace beamfork {

namespace {

// To another step; a black screen is lit again by it.
void go_to_step(const Ui& ui, std::size_t step) {
    auto& talk = ui.state.talk;
    if (!talk) return;
    talk->is_black = false;
    if (step >= talk->steps) return;
    const bool is_other = step != talk->step;
    talk->step = step;
    if (!is_other && !talk->is_turned) return;
    talk->from = ui.session.camera;
    talk->flight_done = 0;
    talk->is_turned = false;
}

constexpr ActionEntry talk_entry(const char* name,
                                 const char* label,
                                 std::array<Chord, 3> chords,
                                 void (*run)(const Ui&)) {
    return {name, "In a talk", label, chords, Heard::always, false, nullptr, run};
}

constexpr std::array talk_table{
    talk_entry("talk/forward",
               "The next step",
               {{{ImGuiKey_RightArrow}, {ImGuiKey_PageDown}, {ImGuiKey_Space}}},
               [](const Ui& ui) {
                   if (ui.state.talk) go_to_step(ui, ui.state.talk->step + 1);
               }),
    talk_entry("talk/back",
               "The step before",
               {{{ImGuiKey_LeftArrow}, {ImGuiKey_PageUp}, {ImGuiKey_Backspace}}},
               [](const Ui& ui) {
                   const bool can = ui.state.talk && ui.state.talk->step > 0;
                   if (can) go_to_step(ui, ui.state.talk->step - 1);
               }),
    talk_entry("talk/first",
               "The first step",
               {{{ImGuiKey_Home}}},
               [](const Ui& ui) { go_to_step(ui, 0); }),
    talk_entry("talk/black",
               "The screen black, or back",
               {{{ImGuiKey_B}, {ImGuiKey_Period}}},
               [](const Ui& ui) {
                   if (ui.state.talk) ui.state.talk->is_black = !ui.state.talk->is_black;
               }),
    talk_entry("talk/notes",
               "Notes and time in a window of their own, or not",
               {{{ImGuiKey_S}}},
               [](const Ui& ui) {
                   if (ui.state.talk) ui.state.talk->has_notes = !ui.state.talk->has_notes;
               }),
    talk_entry("talk/leave", "Leave the talk", {{{ImGuiKey_Escape}, {ImGuiKey_F5}}}, leave_talk),
};

}  // namespace

std::span<const ActionEntry> talk_actions() { return talk_table; }

}  // namespace beamfork
