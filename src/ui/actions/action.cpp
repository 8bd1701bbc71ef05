#include "ui/actions/action.hpp"

#include <filesystem>

#include "base/contract.hpp"
#include "scene/words/glossary.hpp"
#include "ui/actions/action_search.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/shell/panels.hpp"

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

std::string chord_text(const Chord& chord) {
    if (chord.key == ImGuiKey_None) return {};
    std::string text;
    if ((chord.held & ImGuiMod_Ctrl) != 0) text += "Ctrl+";
    if ((chord.held & ImGuiMod_Shift) != 0) text += "Shift+";
    if ((chord.held & ImGuiMod_Alt) != 0) text += "Alt+";
    return text + key_word(chord.key);
}

void add_files(const Ui& ui, std::vector<Action>& list) {
    for (const std::string& file : ui.view.desk.recent_files) {
        const auto open = [file](const Ui& now) { ask_for_command(now, OpenFile{file}); };
        list.push_back({"setup/recent/" + file, "Setup",
                        "Open " + std::filesystem::path(file).filename().string(), file, "", true,
                        open});
    }
    for (const DemoEntry& demo : ui.view.demos) {
        const auto open = [asset = demo.asset](const Ui& now) {
            ask_for_command(now, OpenDemo{asset});
        };
        list.push_back(
            {"setup/example/" + demo.asset, "Examples", demo.title, demo.story, "", true, open});
    }
}

void add_open_setups(const Ui& ui, std::vector<Action>& list) {
    for (const OpenSetupEntry& setup : ui.view.desk.setups) {
        if (setup.number == ui.view.desk.shown_setup) continue;
        const auto show = [number = setup.number](const Ui& now) {
            now.requests.commands.emplace_back(ShowSetup{number});
        };
        list.push_back({"setup/show/" + std::to_string(setup.number), "Setup",
                        "Go to " + (setup.title.empty() ? setup.file : setup.title), setup.file, "",
                        true, show});
    }
}

void add_parts(const Ui& ui, std::vector<Action>& list) {
    for (std::size_t i = 0; i < ui.setup().parts.size(); ++i) {
        const Part& part = ui.setup().parts[i];
        const auto select = [i](const Ui& now) {
            if (i < now.setup().parts.size()) now.session.pose.selected_part = i;
        };
        list.push_back({"part/select/" + std::to_string(i), "Parts", "Select " + part.name,
                        kind_of(part.body).help, "", true, select});
    }
    for (const PartKind& kind : part_kinds()) {
        const auto add = [key = kind.key](const Ui& now) { add_part(now, key); };
        const std::string why_not = why_not_add_part(ui, kind.key);
        list.push_back({"part/add/" + kind.key, "Parts", "Add " + kind.label,
                        why_not.empty() ? kind.help : why_not, "", why_not.empty(), add});
    }
}

void show_panel(const Ui& ui, const PanelEntry& entry) {
    const bool shares_place = entry.is_study() || (ui.state.is_narrow && entry.is_in_strip());
    fold_panel(ui.session, shares_place ? "study" : entry.stem, ui.state.is_narrow, false);
    if (entry.is_in_strip()) ui.session.narrow_shows = entry.stem;
    if (entry.is_study()) {
        ui.session.study = entry.stem;
    } else {
        ui.session.study_is_wide &=
            entry.area != &Layout::focus_budget && entry.area != &Layout::light_at_stops;
    }
    ui.state.panel_wanted = window_name(entry);
}

void add_words(std::vector<Action>& list) {
    for (const Term& term : glossary()) {
        const auto explain = [word = term.word](const Ui& now) { ask_for_glossary(now, word); };
        list.push_back({"glossary/" + std::string(term.word), "Glossary",
                        "Explain: " + std::string(term.word), std::string(term.meaning), "", true,
                        explain});
    }
}

void add_panels(std::vector<Action>& list) {
    for (const PanelEntry& entry : panels()) {
        const auto show = [&entry](const Ui& now) { show_panel(now, entry); };
        list.push_back({"panel/" + std::string(entry.stem), "Panels",
                        "Show " + std::string(entry.title), std::string(entry.help), "", true,
                        show});
    }
}

}  // namespace

void for_each_action(const std::function<void(const ActionEntry&)>& use) {
    for (const auto& part : {setup_actions(), part_actions(), view_actions(), window_actions()}) {
        for (const ActionEntry& entry : part)
            use(entry);
    }
}

std::string keys_text(const ActionEntry& entry) { return chord_text(entry.chords.front()); }

std::string all_keys_text(const ActionEntry& entry) {
    std::string text;
    for (const Chord& chord : entry.chords) {
        const bool is_twin = chord.key == ImGuiKey_KeypadAdd || chord.key == ImGuiKey_KeypadSubtract
                             || (chord.key == ImGuiKey_Equal && (chord.held & ImGuiMod_Shift) != 0);
        if (chord.key == ImGuiKey_None || is_twin) continue;
        text += (text.empty() ? "" : " or ") + chord_text(chord);
    }
    return text;
}

const ActionEntry& action_named(std::string_view name) {
    const ActionEntry* found = nullptr;
    for_each_action([&](const ActionEntry& entry) {
        if (entry.name == name) found = &entry;
    });
    BEAMFORK_EXPECTS(found != nullptr);
    return *found;
}

std::string keys_text(std::string_view name) { return keys_text(action_named(name)); }

std::string with_keys(std::string_view sentence, std::string_view name) {
    return std::string(sentence) + " " + keys_text(name);
}

std::vector<Action> all_actions(const Ui& ui) {
    std::vector<Action> list;
    for_each_action([&](const ActionEntry& entry) {
        const bool enabled = entry.can == nullptr || entry.can(ui);
        list.push_back({entry.name, entry.group, entry.label, enabled ? "" : entry.why_not,
                        keys_text(entry), enabled, entry.run});
    });
    add_open_setups(ui, list);
    add_parts(ui, list);
    add_panels(list);
    add_files(ui, list);
    add_words(list);
    return list;
}

}  // namespace beamfork
