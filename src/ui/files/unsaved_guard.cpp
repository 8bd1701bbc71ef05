#include "ui/files/unsaved_guard.hpp"

#include <algorithm>

#include "desk/desk_requests.hpp"
#include "ui/files/file_dialog.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

constexpr const char* unsaved_popup = "Unsaved changes";

bool would_drop(const Command& command, const OpenSetupEntry& setup) {
    if (const auto* closed = std::get_if<CloseSetup>(&command))
        return closed->number == setup.number;
    return std::holds_alternative<Quit>(command);
}

// The next setup whose unsaved work would be lost and was not answered for.
const OpenSetupEntry* next_to_ask(const FilesUi& ui, const Command& command) {
    const auto& agreed = ui.state.agreed_to_lose;
    const auto& setups = ui.desk.setups;
    const auto found = std::find_if(setups.begin(), setups.end(), [&](const OpenSetupEntry& setup) {
        return setup.modified && would_drop(command, setup) && !agreed.contains(setup.number);
    });
    return found == setups.end() ? nullptr : &*found;
}

void forget_pending(FilesState& state) {
    state.pending.reset();
    state.saving_for_pending = false;
    state.save_was_requested = false;
    state.agreed_to_lose.clear();
}

void look_after_save(const FilesUi& ui) {
    FilesState& state = ui.state;
    if (!state.pending || !state.saving_for_pending) return;
    const bool is_under_way = state.save_was_requested || state.file_dialog;
    if (ui.desk.modified && is_under_way) return;
    if (ui.desk.modified) {  // the save failed or was called off: nothing waits any more
        forget_pending(state);
    } else {
        state.saving_for_pending = false;
    }
}

// Nothing is left to ask: goes on. Else brings the setup that is asked about into the window.
void go_on(const FilesUi& ui) {
    FilesState& state = ui.state;
    if (!state.pending || state.saving_for_pending) return;
    const OpenSetupEntry* setup = next_to_ask(ui, *state.pending);
    if (setup == nullptr) {
        ui.desk_requests.commands.push_back(*state.pending);
        forget_pending(state);
    } else if (setup->number != ui.desk.shown_setup) {
        ui.desk_requests.commands.emplace_back(ShowSetup{setup->number});
        ui.pace.animating = true;
    }
}

}  // namespace

void ask_for_command(const FilesUi& ui, Command command) {
    ui.state.agreed_to_lose.clear();
    if (next_to_ask(ui, command) != nullptr) {
        ui.state.pending = std::move(command);
        ui.state.saving_for_pending = false;
    } else {
        ui.desk_requests.commands.push_back(std::move(command));
    }
}

void ask_to_save(const FilesUi& ui) {
    if (ui.desk.file_path.empty()) {
        ask_to_save_as(ui);
    } else {
        ui.desk_requests.commands.emplace_back(SaveFile{ui.desk.file_path});
        ui.state.save_was_requested = true;
    }
}

void ask_to_save_as(const FilesUi& ui) { start_file_dialog(ui, FilePurpose::save); }
void ask_to_open(const FilesUi& ui) { start_file_dialog(ui, FilePurpose::open); }

void draw_unsaved_guard(const FilesUi& ui) {
    FilesState& state = ui.state;
    look_after_save(ui);
    state.save_was_requested = false;
    go_on(ui);
    const bool asks = state.pending && !state.saving_for_pending && ui.desk.modified;
    if (asks && !ImGui::IsPopupOpen(unsaved_popup)) ImGui::OpenPopup(unsaved_popup);
    if (!begin_question(unsaved_popup, grid(110))) return;
    ImGui::PushFont(font(TextFace::bold));
    wrapped_text("“" + ui.setup().title + "” has changes that are not saved.", colour(Tone::text));
    ImGui::PopFont();
    wrapped_text("Save them first?", colour(Tone::text_dim));
    ImGui::Dummy({1, grid(2)});
    if (text_button(ui, "unsaved/save", "Save", "Saves, then goes on.")) {
        state.saving_for_pending = true;
        ask_to_save(ui);
    }
    ImGui::SameLine();
    if (text_button(ui, "unsaved/discard", "Discard the changes", "Goes on without saving.")) {
        state.agreed_to_lose.insert(ui.desk.shown_setup);
        go_on(ui);
    }
    ImGui::SameLine();
    if (text_button(ui, "unsaved/cancel", "Cancel", "Stays with this setup. Esc")
        || ImGui::IsKeyPressed(ImGuiKey_Escape)) {
        forget_pending(state);
    }
    if (!state.pending || state.saving_for_pending) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
