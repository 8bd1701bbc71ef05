#include "ui/unsaved_guard.hpp"

#include "ui/file_dialog.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

namespace {

constexpr const char* popup = "Unsaved changes";

void go_on_after_save(const Ui& ui) {
    TransientState& state = ui.state;
    if (!state.pending || !state.saving_for_pending) return;
    if (!ui.view.modified) {
        ui.requests.commands.push_back(*state.pending);
    } else if (state.save_was_requested || state.file_dialog) {
        return;  // the app has not had its turn, or the user still chooses where to
    }
    // Saved, or the save failed or was called off: nothing waits any more.
    state.pending.reset();
    state.saving_for_pending = false;
    state.save_was_requested = false;
}

}  // namespace

bool replaces_document(const Command& command) {
    return std::holds_alternative<NewSetup>(command)
           || std::holds_alternative<DuplicateSetup>(command)
           || std::holds_alternative<StartSetup>(command)
           || std::holds_alternative<OpenDemo>(command)
           || std::holds_alternative<OpenFile>(command);
}

void ask_for_command(const Ui& ui, Command command) {
    const bool drops_work = replaces_document(command) || std::holds_alternative<Quit>(command);
    if (drops_work && ui.view.modified) {
        ui.state.pending = std::move(command);
        ui.state.saving_for_pending = false;
    } else {
        ui.requests.commands.push_back(std::move(command));
    }
}

void ask_to_save(const Ui& ui) {
    if (ui.view.file_path.empty()) {
        ask_to_save_as(ui);
    } else {
        ui.requests.commands.emplace_back(SaveFile{ui.view.file_path});
        ui.state.save_was_requested = true;
    }
}

void ask_to_save_as(const Ui& ui) { start_file_dialog(ui, FilePurpose::save); }
void ask_to_open(const Ui& ui) { start_file_dialog(ui, FilePurpose::open); }

void draw_unsaved_guard(const Ui& ui) {
    TransientState& state = ui.state;
    go_on_after_save(ui);
    state.save_was_requested = false;
    const bool asks = state.pending && !state.saving_for_pending;
    if (asks && !ImGui::IsPopupOpen(popup)) ImGui::OpenPopup(popup);
    if (!begin_question(popup, grid(110))) return;
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
        ui.requests.commands.push_back(*state.pending);
        state.pending.reset();
    }
    ImGui::SameLine();
    if (text_button(ui, "unsaved/cancel", "Cancel", "Stays with this setup. Esc")
        || ImGui::IsKeyPressed(ImGuiKey_Escape)) {
        state.pending.reset();
    }
    if (!state.pending || state.saving_for_pending) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
