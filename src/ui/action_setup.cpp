#include "ui/action.hpp"
#include "ui/describe_dialog.hpp"
#include "ui/export_dialog.hpp"
#include "ui/unsaved_guard.hpp"

namespace beamfork {

namespace {

constexpr int ctrl_held = ImGuiMod_Ctrl;
constexpr int ctrl_shift_held = ImGuiMod_Ctrl | ImGuiMod_Shift;

constexpr std::array setup_table{
    ActionEntry{"setup/new",
                "Setup",
                "New setup",
                {{{ImGuiKey_N, ctrl_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ask_for_command(ui, NewSetup{}); }},
    ActionEntry{"setup/questions",
                "Setup",
                "Describe my setup …",
                {{{ImGuiKey_N, ctrl_shift_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { start_describe_dialog(ui); }},
    ActionEntry{"setup/open",
                "Setup",
                "Open a setup …",
                {{{ImGuiKey_O, ctrl_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ask_to_open(ui); }},
    ActionEntry{"setup/save",
                "Setup",
                "Save",
                {{{ImGuiKey_S, ctrl_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ask_to_save(ui); }},
    ActionEntry{"setup/save_as",
                "Setup",
                "Save as …",
                {{{ImGuiKey_S, ctrl_shift_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ask_to_save_as(ui); }},
    ActionEntry{"setup/duplicate",
                "Setup",
                "Duplicate the setup",
                {{{ImGuiKey_D, ctrl_shift_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ask_for_command(ui, DuplicateSetup{}); }},
    ActionEntry{"setup/take",
                "Setup",
                "Take it with you: page, picture, model or film …",
                {{{ImGuiKey_E, ctrl_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { start_export_dialog(ui); }},
    ActionEntry{"setup/describe",
                "Setup",
                "Title and story",
                {},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) {
                    ui.session.folded.erase("part");
                    ui.session.selected_part.reset();
                }},
    ActionEntry{"setup/undo",
                "Setup",
                "Undo",
                {{{ImGuiKey_Z, ctrl_held}}},
                Heard::between_text,
                true,
                [](const Ui& ui) { return ui.view.can_undo; },
                [](const Ui& ui) { ui.requests.commands.emplace_back(Undo{}); }},
    ActionEntry{"setup/redo",
                "Setup",
                "Redo",
                {{{ImGuiKey_Z, ctrl_shift_held}, {ImGuiKey_Y, ctrl_held}}},
                Heard::between_text,
                true,
                [](const Ui& ui) { return ui.view.can_redo; },
                [](const Ui& ui) { ui.requests.commands.emplace_back(Redo{}); }},
    ActionEntry{"setup/steps",
                "Setup",
                "All changes: go back or forth to any",
                {{{ImGuiKey_H, ctrl_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ui.state.steps_wanted = true; }},
    ActionEntry{"setup/quit",
                "Setup",
                "Quit",
                {{{ImGuiKey_Q, ctrl_held}}},
                Heard::always,
                false,
                nullptr,
                [](const Ui& ui) { ask_for_command(ui, Quit{}); }},
};

}  // namespace

std::span<const ActionEntry> setup_actions() { return setup_table; }

}  // namespace beamfork
