// Everything that the user can ask for by name: one table from which the keys, the search, the menus and the page of keys
// are made.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ui/actions/action.hpp"
#include "ui/window_ui.hpp"

namespace beamfork {

using ActionEntry = KeyedAction<WindowUi>;

/// By topic; the <topic>_actions.cpp hold them.
std::span<const ActionEntry> setup_actions();
std::span<const ActionEntry> part_actions();
std::span<const ActionEntry> view_actions();
std::span<const ActionEntry> panel_actions();

/// Calls `use` with each entry of all but the speaker's (talk_actions()).
void for_each_action(const std::function<void(const ActionEntry&)>& use);
/// A name that is not in the table breaks the contract.
const ActionEntry& action_named(std::string_view name);
[[nodiscard]] bool can_run(const ActionEntry& entry, const WindowUi& ui);

/// "Ctrl+Shift+S", of the first chord; empty without one.
std::string keys_text(const ActionEntry& entry);
std::string keys_text(std::string_view name);
/// All its chords: "Ctrl+Shift+Z or Ctrl+Y".
std::string all_keys_text(const ActionEntry& entry);

/// The table, for those rooms that know no more of an action than its name.
class WindowActions : public NamedActions {
public:
    /// Before the first run() or can().
    void serve(const WindowUi& ui) { ui_ = &ui; }
    [[nodiscard]] std::string keys_text(std::string_view name) const override;
    [[nodiscard]] bool can(std::string_view name) const override;
    void run(std::string_view name) const override;
    [[nodiscard]] std::vector<KeyRow> key_rows() const override;

private:
    const WindowUi* ui_ = nullptr;
};

/// The table's entries and what the setup, the examples and the panels add: every part to select, every kind to
/// add, every example and recent file to open, every panel to go to, every study to show, every word of the trade
/// to explain. `ui` must outlive them.
std::vector<Action> all_actions(const WindowUi& ui);

/// Keys that work everywhere in the window. Nothing happens while a question is open; single letters also wait while
/// text is typed.
void use_shortcuts(const WindowUi& ui);

/// Opens the glossary on one word; on all of them when it is empty.
void ask_for_glossary(const WindowUi& ui, std::string_view word);
/// Gives the keyboard to the next panel that is shown (+1), or to the one before (-1).
void go_to_panel(const WindowUi& ui, int step);
/// Gives the keyboard to the next gap between panels.
void go_to_gap(const WindowUi& ui);

}  // namespace beamfork
