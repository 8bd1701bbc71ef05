#include "ui/files/recovery_question.hpp"

#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

constexpr const char* recovery_popup = "Unsaved work was found";

}  // namespace

void draw_recovery_question(const FilesUi& ui) {
    bool& is_put_off = ui.state.recovery_put_off;
    const bool asks = !is_put_off && !ui.view.lost_work.empty();
    if (asks && !ImGui::IsPopupOpen(recovery_popup)) ImGui::OpenPopup(recovery_popup);
    if (!begin_question(recovery_popup, grid(120))) return;
    if (asks) {
        const LostWorkEntry& work = ui.view.lost_work.front();
        ImGui::PushFont(font(TextFace::bold));
        wrapped_text("“" + work.title + "” was not saved when Beamfork ended unexpectedly.",
                     colour(Tone::text));
        ImGui::PopFont();
        wrapped_text(work.file.empty()
                         ? "It was never saved into a file."
                         : "Its file " + work.file
                               + " is as it was saved last; restoring does not write it.",
                     colour(Tone::text_dim));
        ui.note("recovery/words", work.title, work.file);
        ImGui::Dummy({1, grid(2)});
        if (text_button(ui, "recovery/restore", "Restore it",
                        "Opens the unsaved work; save it then where you like."))
            ui.asks.recovery = RecoveryAnswer::restore;
        ImGui::SameLine();
        if (text_button(ui, "recovery/discard", "Discard it", "Deletes the unsaved work for good."))
            ui.asks.recovery = RecoveryAnswer::discard;
        ImGui::SameLine();
        if (text_button(ui, "recovery/later", "Later", "Asks again at the next start. Esc")
            || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
            is_put_off = true;
        }
    }
    if (!asks || is_put_off) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
