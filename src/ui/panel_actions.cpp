#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "scene/words/glossary.hpp"
#include "ui/actions/keys_page.hpp"
#include "ui/files/start_page.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/panels.hpp"
#include "ui/shell/splitters.hpp"
#include "ui/window_actions.hpp"

namespace beamfork {

namespace {

constexpr std::array panel_action_table{
    ActionEntry{"window/find",
                "Window",
                "Find an action or a part …",
                {{{ImGuiKey_K, ImGuiMod_Ctrl}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.state.search.emplace(); }},
    ActionEntry{"window/talk",
                "Window",
                "Give a talk …",
                {{{ImGuiKey_F5}}},
                Heard::always,
                false,
                [](const WindowUi& ui) { return ui.report != nullptr; },
                [](const WindowUi& ui) { ask_for_talk(ui.talk()); },
                "The setup makes no train."},
    ActionEntry{"window/start_page",
                "Window",
                "Start page: demos, files opened lately",
                {{{ImGuiKey_Home, ImGuiMod_Alt}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ask_for_start_page(ui.files()); }},
    ActionEntry{"window/keys",
                "Window",
                "All keys",
                {{{ImGuiKey_F1}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.state.shell.page_wanted = keys_popup; }},
    ActionEntry{"window/glossary",
                "Window",
                "Glossary: the words of the trade, or the one under the pointer",
                {{{ImGuiKey_F1, ImGuiMod_Shift}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) {
                    const Term* term = term_in(ui.kept.pointed_label);
                    ask_for_glossary(ui, term != nullptr ? term->word : "");
                }},
    ActionEntry{"window/cautions",
                "Window",
                "Cautions: sun, weight, night work",
                {},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.state.shell.page_wanted = "Cautions"; }},
    ActionEntry{"window/assumptions",
                "Window",
                "What is assumed",
                {},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.state.shell.page_wanted = "What is assumed"; }},
    ActionEntry{"window/next_panel",
                "Window",
                "Next panel",
                {{{ImGuiKey_F6}}},
                Heard::between_text,
                false,
                nullptr,
                [](const WindowUi& ui) { go_to_panel(ui, 1); }},
    ActionEntry{"window/panel_before",
                "Window",
                "Panel before",
                {{{ImGuiKey_F6, ImGuiMod_Shift}}},
                Heard::between_text,
                false,
                nullptr,
                [](const WindowUi& ui) { go_to_panel(ui, -1); }},
    ActionEntry{"window/sides",
                "Window",
                "Swap the sides of parts and findings, for the other hand",
                {},
                Heard::between_text,
                false,
                nullptr,
                [](const WindowUi& ui) {
                    ui.session.layout.parts_at_left = !ui.session.layout.parts_at_left;
                }},
    ActionEntry{"window/gap",
                "Window",
                "Next gap between panels: the arrows move it",
                {{{ImGuiKey_F6, ImGuiMod_Ctrl}}},
                Heard::between_text,
                false,
                nullptr,
                go_to_gap},
    ActionEntry{"window/wide",
                "Window",
                "Study over the whole width, or beside the others",
                {},
                Heard::between_text,
                false,
                nullptr,
                [](const WindowUi& ui) {
                    ui.session.layout.study_is_wide = !ui.session.layout.study_is_wide;
                }},
    ActionEntry{"window/larger",
                "Window",
                "Larger text",
                {{{ImGuiKey_Equal, ImGuiMod_Ctrl},
                  {ImGuiKey_Equal, ImGuiMod_Ctrl | ImGuiMod_Shift},
                  {ImGuiKey_KeypadAdd, ImGuiMod_Ctrl}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.session.layout.text_scale *= 1.1F; }},
    ActionEntry{"window/smaller",
                "Window",
                "Smaller text",
                {{{ImGuiKey_Minus, ImGuiMod_Ctrl}, {ImGuiKey_KeypadSubtract, ImGuiMod_Ctrl}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.session.layout.text_scale /= 1.1F; }},
    ActionEntry{"window/usual_text",
                "Window",
                "Text of the usual size",
                {{{ImGuiKey_0, ImGuiMod_Ctrl}}},
                Heard::always,
                false,
                nullptr,
                [](const WindowUi& ui) { ui.session.layout.text_scale = 1; }},
};

}  // namespace

std::span<const ActionEntry> panel_actions() { return panel_action_table; }

void go_to_panel(const WindowUi& ui, int step) {
    std::vector<std::string> windows{"picture", ui.state.picture.view_bar_window, "notice_bar",
                                     "setup_row", "top_bar"};
    for (const PanelEntry& entry : panels())
        windows.push_back(window_name(entry));
    windows.emplace_back("status_bar");
    // Not studies that are not chosen, nor a bar with nothing to tell.
    windows = drawn_of(std::move(windows));
    const std::size_t now = with_keyboard(windows).value_or(0);
    const std::size_t forward = step > 0 ? 1 : windows.size() - 1;
    ui.state.shell.panel_wanted = windows[(now + forward) % windows.size()];
}

void go_to_gap(const WindowUi& ui) {
    const auto gaps = drawn_of({splitter_names.begin(), splitter_names.end()});
    if (gaps.empty()) return;
    const auto now = with_keyboard(gaps);
    ui.state.shell.panel_wanted = gaps[now ? (*now + 1) % gaps.size() : 0];
}

}  // namespace beamfork
