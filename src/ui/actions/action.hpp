// Everything that the user can ask for by name: one table from which the keys, the search and the page of keys
// are made.
#pragma once

#include <array>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ui/shell/ui.hpp"

namespace beamfork {

/// A key, held with ImGuiMod_ flags. ImGuiKey_None: no key.
struct Chord {
    ImGuiKey key = ImGuiKey_None;
    int held = 0;
};

/// When a key is heard. All keys wait while a question or list is open or something is dragged.
enum class Heard {
    always,        ///< also while text is typed
    between_text,  ///< not while text is typed
    by_picture     ///< nor while a panel has the keyboard
};

/// An action that there is whatever the setup.
///
/// `run` is called outside every panel: it asks, chooses or changes the session, and never draws.
struct ActionEntry {
    const char* name;   ///< "view/side"
    const char* group;  ///< heading on the page of keys
    const char* label;
    std::array<Chord, 3> chords;
    Heard heard = Heard::between_text;
    bool repeats = false;              ///< again and again while the key is held
    bool (*can)(const Ui&) = nullptr;  ///< null: always
    void (*run)(const Ui&) = nullptr;
    const char* why_not = "";  ///< what is missing while it cannot be done; with `can` only
};

/// By topic; the action_<topic>.cpp hold them.
std::span<const ActionEntry> setup_actions();
std::span<const ActionEntry> part_actions();
std::span<const ActionEntry> view_actions();
std::span<const ActionEntry> window_actions();
/// Of the speaker's keys: heard while a talk is given, and then they alone.
std::span<const ActionEntry> talk_actions();

/// Calls `use` with each entry of all but the speaker's.
void for_each_action(const std::function<void(const ActionEntry&)>& use);

/// "Ctrl+Shift+S", of the first chord; empty without one.
std::string keys_text(const ActionEntry& entry);
/// All its chords: "Ctrl+Shift+Z or Ctrl+Y".
std::string all_keys_text(const ActionEntry& entry);
/// A name that is not in the table breaks the contract.
const ActionEntry& action_named(std::string_view name);
/// The first by name, for menus and hints; a name that is not in the table breaks the contract.
std::string keys_text(std::string_view name);
/// "Takes it out. Delete"
std::string with_keys(std::string_view sentence, std::string_view name);

/// An action as it is offered now.
struct Action {
    std::string name;
    std::string group;
    std::string label;
    std::string help;
    std::string keys;
    bool enabled = true;
    std::function<void(const Ui&)> run;
};

/// The table's entries and what the setup, the examples and the panels add: every part to select, every kind to
/// add, every example and recent file to open, every panel to go to, every study to show, every word of the trade
/// to explain.
std::vector<Action> all_actions(const Ui& ui);

/// Adds a part of that kind behind the selected one, where it may stand, and selects it.
void add_part(const Ui& ui, const std::string& kind);
/// Why none can be added; empty: one can.
std::string why_not_add_part(const Ui& ui, const std::string& kind);
/// Gives the keyboard to the next panel that is shown (+1), or to the one before (-1).
void go_to_panel(const Ui& ui, int step);
/// Gives the keyboard to the next gap between panels.
void go_to_gap(const Ui& ui);

}  // namespace beamfork
