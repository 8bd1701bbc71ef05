#include "ui/window_actions.hpp"

#include <filesystem>

#include "base/contract.hpp"
#include "desk/desk_requests.hpp"
#include "scene/words/glossary.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/panels.hpp"
#include "ui/words/glossary_page.hpp"

namespace beamfork {

namespace {

void add_files(const WindowUi& ui, std::vector<Action>& list) {
    for (const std::string& file : ui.view.desk.recent_files) {
        const auto open = [&ui, file] { ask_for_command(ui.files(), OpenFile{file}); };
        list.push_back({"setup/recent/" + file, "Setup",
                        "Open " + std::filesystem::path(file).filename().string(), file, "", true,
                        open});
    }
    for (const DemoEntry& demo : ui.view.files.demos) {
        const auto open = [&ui, asset = demo.asset] {
            ask_for_command(ui.files(), OpenDemo{asset});
        };
        list.push_back(
            {"setup/example/" + demo.asset, "Examples", demo.title, demo.story, "", true, open});
    }
}

void add_open_setups(const WindowUi& ui, std::vector<Action>& list) {
    for (const OpenSetupEntry& setup : ui.view.desk.setups) {
        if (setup.number == ui.view.desk.shown_setup) continue;
        const auto show = [&ui, number = setup.number] {
            ui.desk_requests.commands.emplace_back(ShowSetup{number});
        };
        list.push_back({"setup/show/" + std::to_string(setup.number), "Setup",
                        "Go to " + (setup.title.empty() ? setup.file : setup.title), setup.file, "",
                        true, show});
    }
}

void add_parts(const WindowUi& ui, std::vector<Action>& list) {
    for (std::size_t i = 0; i < ui.setup().parts.size(); ++i) {
        const Part& part = ui.setup().parts[i];
        const auto select = [&ui, i] {
            if (i < ui.setup().parts.size()) ui.selected_part = i;
        };
        list.push_back({"part/select/" + std::to_string(i), "Parts", "Select " + part.name,
                        kind_of(part.body).help, "", true, select});
    }
    for (const PartKind& kind : part_kinds()) {
        const auto add = [&ui, key = kind.key] { add_part(ui, key); };
        const std::string why_not = why_not_add_part(ui, kind.key);
        list.push_back({"part/add/" + kind.key, "Parts", "Add " + kind.label,
                        why_not.empty() ? kind.help : why_not, "", why_not.empty(), add});
    }
}

void show_panel(const WindowUi& ui, const PanelEntry& entry) {
    LayoutSession& layout = ui.session.layout;
    ShellState& shell = ui.state.shell;
    const bool shares_place = entry.is_study() || (shell.is_narrow && entry.is_in_strip());
    fold_panel(layout, shares_place ? "study" : entry.stem, shell.is_narrow, false);
    if (entry.is_in_strip()) layout.narrow_shows = entry.stem;
    if (entry.is_study()) {
        layout.study = entry.stem;
    } else {
        layout.study_is_wide &=
            entry.area != &Layout::focus_budget && entry.area != &Layout::light_at_stops;
    }
    shell.panel_wanted = window_name(entry);
}

void add_words(const WindowUi& ui, std::vector<Action>& list) {
    for (const Term& term : glossary()) {
        const auto explain = [&ui, word = term.word] { ask_for_glossary(ui, word); };
        list.push_back({"glossary/" + std::string(term.word), "Glossary",
                        "Explain: " + std::string(term.word), std::string(term.meaning), "", true,
                        explain});
    }
}

void add_panels(const WindowUi& ui, std::vector<Action>& list) {
    for (const PanelEntry& entry : panels()) {
        const auto show = [&ui, &entry] { show_panel(ui, entry); };
        list.push_back({"panel/" + std::string(entry.stem), "Panels",
                        "Show " + std::string(entry.title), std::string(entry.help), "", true,
                        show});
    }
}

}  // namespace

void for_each_action(const std::function<void(const ActionEntry&)>& use) {
    for (const auto& part : {setup_actions(), part_actions(), view_actions(), panel_actions()}) {
        for (const ActionEntry& entry : part)
            use(entry);
    }
}

std::string keys_text(const ActionEntry& entry) { return chord_text(entry.chords); }

std::string all_keys_text(const ActionEntry& entry) { return all_chords_text(entry.chords); }

const ActionEntry& action_named(std::string_view name) {
    const ActionEntry* found = nullptr;
    for_each_action([&](const ActionEntry& entry) {
        if (entry.name == name) found = &entry;
    });
    BEAMFORK_EXPECTS(found != nullptr);
    return *found;
}

bool can_run(const ActionEntry& entry, const WindowUi& ui) {
    return entry.can == nullptr || entry.can(ui);
}

std::string keys_text(std::string_view name) { return keys_text(action_named(name)); }

std::string WindowActions::keys_text(std::string_view name) const {
    return beamfork::keys_text(name);
}

bool WindowActions::can(std::string_view name) const { return can_run(action_named(name), *ui_); }

void WindowActions::run(std::string_view name) const { action_named(name).run(*ui_); }

std::vector<KeyRow> WindowActions::key_rows() const {
    std::vector<KeyRow> rows;
    for_each_action([&](const ActionEntry& entry) {
        if (entry.chords.front().key != ImGuiKey_None)
            rows.push_back({entry.group, entry.label, all_keys_text(entry)});
    });
    for (const auto& entry : talk_actions())
        rows.push_back({entry.group, entry.label, all_chords_text(entry.chords)});
    return rows;
}

std::vector<Action> all_actions(const WindowUi& ui) {
    std::vector<Action> list;
    for_each_action([&](const ActionEntry& entry) {
        const bool enabled = can_run(entry, ui);
        list.push_back({entry.name, entry.group, entry.label, enabled ? "" : entry.why_not,
                        keys_text(entry), enabled, [&ui, run = entry.run] { run(ui); }});
    });
    add_open_setups(ui, list);
    add_parts(ui, list);
    add_panels(ui, list);
    add_files(ui, list);
    add_words(ui, list);
    return list;
}

void use_shortcuts(const WindowUi& ui) {
    const HeldKeys keys = held_keys(ui.kept.held_before);
    if (ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel)
        || ui.kept.gesture_open) {
        return;
    }
    const ActionEntry* asked = nullptr;
    for_each_action([&](const ActionEntry& entry) {
        if (is_heard(entry.heard) && is_pressed(entry.chords, keys.flags(), entry.repeats))
            asked = &entry;
    });
    if (asked != nullptr && can_run(*asked, ui)) asked->run(ui);
}

void ask_for_glossary(const WindowUi& ui, std::string_view word) {
    ui.state.glossary_typed = word;
    ui.state.shell.page_wanted = glossary_popup;
}

}  // namespace beamfork
