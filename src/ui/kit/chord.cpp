#include "ui/kit/chord.hpp"

#include <algorithm>
#include <utility>

namespace beamfork {

namespace {

std::string key_word(ImGuiKey key) {
    switch (key) {
    case ImGuiKey_UpArrow: return "Up";
    case ImGuiKey_DownArrow: return "Down";
    case ImGuiKey_LeftArrow: return "Left";
    case ImGuiKey_RightArrow: return "Right";
    case ImGuiKey_PageUp: return "Page Up";
    case ImGuiKey_PageDown: return "Page Down";
    case ImGuiKey_Period: return ".";
    case ImGuiKey_Escape: return "Esc";
    case ImGuiKey_Equal: return "plus";
    case ImGuiKey_Minus: return "minus";
    default: return ImGui::GetKeyName(key);
    }
}

std::string text_of(const Chord& chord) {
    if (chord.key == ImGuiKey_None) return {};
    std::string text;
    if ((chord.held & ImGuiMod_Ctrl) != 0) text += "Ctrl+";
    if ((chord.held & ImGuiMod_Shift) != 0) text += "Shift+";
    if ((chord.held & ImGuiMod_Alt) != 0) text += "Alt+";
    return text + key_word(chord.key);
}

}  // namespace

int HeldKeys::flags() const {
    return (ctrl ? ImGuiMod_Ctrl : 0) | (shift ? ImGuiMod_Shift : 0) | (alt ? ImGuiMod_Alt : 0);
}

HeldKeys held_keys(HeldKeys& before_now) {
    const ImGuiIO& io = ImGui::GetIO();
    const HeldKeys now{io.KeyCtrl, io.KeyShift, io.KeyAlt};
    const HeldKeys before = std::exchange(before_now, now);
    return {now.ctrl || before.ctrl, now.shift || before.shift, now.alt || before.alt};
}

bool is_pressed(const Chords& chords, int held, bool repeats) {
    return std::any_of(chords.begin(), chords.end(), [&](const Chord& chord) {
        return chord.key != ImGuiKey_None && chord.held == held
               && ImGui::IsKeyPressed(chord.key, repeats);
    });
}

bool is_heard(Heard heard) {
    const ImGuiIO& io = ImGui::GetIO();
    if (heard == Heard::always) return true;
    return !io.WantTextInput && (heard == Heard::between_text || !io.NavActive);
}

std::string chord_text(const Chords& chords) { return text_of(chords.front()); }

std::string all_chords_text(const Chords& chords) {
    std::string text;
    for (const Chord& chord : chords) {
        const bool is_twin = chord.key == ImGuiKey_KeypadAdd || chord.key == ImGuiKey_KeypadSubtract
                             || (chord.key == ImGuiKey_Equal && (chord.held & ImGuiMod_Shift) != 0);
        if (chord.key == ImGuiKey_None || is_twin) continue;
        text += (text.empty() ? "" : " or ") + text_of(chord);
    }
    return text;
}

}  // namespace beamfork
