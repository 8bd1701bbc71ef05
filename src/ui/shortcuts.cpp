#include "ui/shortcuts.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "ui/export_dialog.hpp"
#include "ui/panels.hpp"
#include "ui/unsaved_guard.hpp"
#include "ui/viewport.hpp"

#include <imgui_internal.h>  // which window has the keyboard

namespace beamfork {

namespace {

bool pressed(ImGuiKey key, bool repeats = false) { return ImGui::IsKeyPressed(key, repeats); }

void use_file_keys(const Ui& ui, bool shift) {
    if (pressed(ImGuiKey_N)) ask_for_command(ui, NewSetup{});
    if (pressed(ImGuiKey_O)) ask_to_open(ui);
    if (pressed(ImGuiKey_S)) shift ? ask_to_save_as(ui) : ask_to_save(ui);
    if (pressed(ImGuiKey_E)) start_export_dialog(ui);
    if (pressed(ImGuiKey_Q)) ask_for_command(ui, Quit{});
    if (pressed(ImGuiKey_Equal) || pressed(ImGuiKey_KeypadAdd)) ui.session.text_scale *= 1.1F;
    if (pressed(ImGuiKey_Minus) || pressed(ImGuiKey_KeypadSubtract)) ui.session.text_scale /= 1.1F;
    if (pressed(ImGuiKey_0)) ui.session.text_scale = 1;
}

void use_undo_keys(const Ui& ui, bool shift) {
    const bool redo = pressed(ImGuiKey_Y, true) || (shift && pressed(ImGuiKey_Z, true));
    if (redo && ui.view.can_redo) ui.requests.commands.emplace_back(Redo{});
    if (!redo && !shift && pressed(ImGuiKey_Z, true) && ui.view.can_undo)
        ui.requests.commands.emplace_back(Undo{});
}

void try_edit(const Ui& ui, const Edit& edit, std::optional<std::size_t> selected_after) {
    if (!apply(ui.view.document, edit)) return;
    ui.edit(edit);
    ui.session.selected_part = selected_after;
}

void use_part_keys(const Ui& ui, const HeldKeys& held) {
    const auto part = ui.session.selected_part;
    if (!part) return;
    if (held.ctrl && pressed(ImGuiKey_D)) try_edit(ui, DuplicatePart{*part}, *part + 1);
    if (pressed(ImGuiKey_Delete)) try_edit(ui, RemovePart{*part}, std::nullopt);
    if (pressed(ImGuiKey_F2)) {
        ui.session.folded.erase("part");
        ui.state.focus_name = true;
    }
    if (held.alt && pressed(ImGuiKey_UpArrow, true) && *part > 0)
        try_edit(ui, MovePart{*part, *part - 1}, *part - 1);
    if (held.alt && pressed(ImGuiKey_DownArrow, true))
        try_edit(ui, MovePart{*part, *part + 1}, *part + 1);
}

// While the picture has the keyboard, the arrows go through the list of parts.
void use_list_keys(const Ui& ui, const HeldKeys& held) {
    if (held.alt || ImGui::GetIO().NavActive || ui.setup().parts.empty()) return;
    const std::size_t last = ui.setup().parts.size() - 1;
    auto& part = ui.session.selected_part;
    if (pressed(ImGuiKey_DownArrow, true)) part = part ? std::min(*part + 1, last) : 0;
    if (pressed(ImGuiKey_UpArrow, true)) part = part ? (*part > 0 ? *part - 1 : 0) : last;
}

// F6 gives the keyboard to the next panel, Shift+F6 to the one before; the picture counts as one.
void use_panel_keys(const HeldKeys& held) {
    if (!pressed(ImGuiKey_F6)) return;
    std::vector<std::string> windows{"picture", "top_bar"};
    for (const PanelEntry& entry : panels())
        windows.push_back(window_name(entry));
    std::erase_if(windows, [](const std::string& name) {  // studies that are not shown
        const ImGuiWindow* window = ImGui::FindWindowByName(name.c_str());
        return window == nullptr || !window->WasActive;
    });
    std::size_t now = 0;
    for (std::size_t i = 0; i < windows.size(); ++i) {
        const ImGuiWindow* window = ImGui::FindWindowByName(windows[i].c_str());
        const ImGuiWindow* focused = ImGui::GetCurrentContext()->NavWindow;
        if (window != nullptr && focused != nullptr && focused->RootWindow == window) now = i;
    }
    const std::size_t step = held.shift ? windows.size() - 1 : 1;
    ImGui::SetWindowFocus(windows[(now + step) % windows.size()].c_str());
}

void use_view_keys(const Ui& ui) {
    for (std::size_t i = 0; i < all_standard_views.size(); ++i) {
        const auto key = static_cast<ImGuiKey>(ImGuiKey_1 + static_cast<int>(i));
        if (pressed(key)) show_view(ui, all_standard_views[i]);
    }
    if (pressed(ImGuiKey_H)) show_view(ui, StandardView::overview);
    if (pressed(ImGuiKey_F)) frame_selection(ui);
    if (pressed(ImGuiKey_N)) ui.session.view.labels = !ui.session.view.labels;
}

// On a slow frame a letter and the release of its modifier arrive together: what was held in the frame before
// counts too.
HeldKeys held_keys(TransientState& state) {
    const ImGuiIO& io = ImGui::GetIO();
    const HeldKeys now{io.KeyCtrl, io.KeyShift, io.KeyAlt};
    const HeldKeys before = std::exchange(state.held_before, now);
    return {now.ctrl || before.ctrl, now.shift || before.shift, now.alt || before.alt};
}

}  // namespace

void use_shortcuts(const Ui& ui) {
    const HeldKeys held = held_keys(ui.state);
    if (ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel)
        || ui.state.gesture_open) {
        return;
    }
    if (held.ctrl && !held.alt) use_file_keys(ui, held.shift);
    if (ImGui::GetIO().WantTextInput) return;
    if (held.ctrl) use_undo_keys(ui, held.shift);
    use_part_keys(ui, held);
    use_panel_keys(held);
    if (held.ctrl) return;
    use_list_keys(ui, held);
    if (!held.alt) use_view_keys(ui);
}

}  // namespace beamfork
