// Keys: which are held and pressed, what an action is called, and how its keys are written.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include <imgui.h>

namespace beamfork {

/// A key, held with ImGuiMod_ flags. ImGuiKey_None: no key.
struct Chord {
    ImGuiKey key = ImGuiKey_None;
    int held = 0;
};
using Chords = std::array<Chord, 3>;

/// When a key is heard. All keys wait while a question or list is open or something is dragged.
enum class Heard {
    always,        ///< also while text is typed
    between_text,  ///< not while text is typed
    by_picture     ///< nor while a panel has the keyboard
};

/// An action that there is whatever the setup. What it is handed, the `Context`, holds what it may change.
///
/// `run` is called outside every panel: it asks, chooses or changes the session, and never draws.
template <class Context>
struct KeyedAction {
    const char* name;   ///< "view/side"
    const char* group;  ///< heading on the page of keys
    const char* label;
    Chords chords;
    Heard heard = Heard::between_text;
    bool repeats = false;                   ///< again and again while the key is held
    bool (*can)(const Context&) = nullptr;  ///< null: always
    void (*run)(const Context&) = nullptr;
    const char* why_not = "";  ///< what is missing while it cannot be done; with `can` only
};

/// Modifier keys that are held.
struct HeldKeys {
    bool ctrl = false;
    bool shift = false;
    bool alt = false;
    [[nodiscard]] int flags() const;  ///< ImGuiMod_
};
/// On a slow frame a letter and the release of its modifier arrive together: what was held in the frame before counts too.
HeldKeys held_keys(HeldKeys& before);

/// One of them is pressed, with exactly these modifiers.
bool is_pressed(const Chords& chords, int held, bool repeats);
bool is_heard(Heard heard);

/// "Ctrl+Shift+S", of the first chord; empty without one.
std::string chord_text(const Chords& chords);
/// All of them: "Ctrl+Shift+Z or Ctrl+Y".
std::string all_chords_text(const Chords& chords);

}  // namespace beamfork
