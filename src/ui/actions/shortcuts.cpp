#include "ui/actions/shortcuts.hpp"

#include <utility>

#include "ui/actions/action.hpp"

namespace beamfork {

namespace {

// On a slow frame a letter and the release of its modifier arrive together: what was held in the frame before
// counts too.
HeldKeys held_keys(TransientState& state) {
    const ImGuiIO& io = ImGui::GetIO();
    const HeldKeys now{io.KeyCtrl, io.KeyShift, io.KeyAlt};
    const HeldKeys before = std::exchange(state.held_before, now);
    return {now.ctrl || before.ctrl, now.shift || before.shift, now.alt || before.alt};
}

bool is_pressed(const ActionEntry& entry, int held) {
    for (const Chord& chord : entry.chords) {
        if (chord.key == ImGuiKey_None || chord.held != held) continue;
        if (ImGui::IsKeyPressed(chord.key, entry.repeats)) return true;
    }
    return false;
}

bool is_heard(Heard heard) {
    const ImGuiIO& io = ImGui::GetIO();
    if (heard == Heard::always) return true;
    return !io.WantTextInput && (heard == Heard::between_text || !io.NavActive);
}

}  // namespace

void use_shortcuts(const Ui& ui) {
    const HeldKeys keys = held_keys(ui.state);
    if (ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel)
        || ui.state.gesture_open) {
        return;
    }
    const int held = (keys.ctrl ? ImGuiMod_Ctrl : 0) | (keys.shift ? ImGuiMod_Shift : 0)
                     | (keys.alt ? ImGuiMod_Alt : 0);
    const ActionEntry* asked = nullptr;
    for_each_action([&](const ActionEntry& entry) {
        if (is_heard(entry.heard) && is_pressed(entry, held)) asked = &entry;
    });
    if (asked != nullptr && (asked->can == nullptr || asked->can(ui))) asked->run(ui);
}

void use_talk_keys(const Ui& ui) {
    const HeldKeys keys = held_keys(ui.state);
    if (keys.ctrl || keys.alt) return;
    const ActionEntry* asked = nullptr;
    for (const ActionEntry& entry : talk_actions()) {
        if (is_pressed(entry, 0)) asked = &entry;
    }
    if (asked != nullptr) {
        asked->run(ui);
        ui.requests.animating = true;
    }
}

}  // namespace beamfork
