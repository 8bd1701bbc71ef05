#include "ui/kit/ui.hpp"

#include "desk/desk_requests.hpp"
#include "document/document.hpp"
#include "ui/kit/tooltip.hpp"

#include <imgui_internal.h>  // GetItemFlags

namespace beamfork {

const Setup& Ui::setup() const { return document.setup; }

void Ui::note(std::string_view name, std::string_view label, std::string_view help) const {
    const bool is_pointed =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    if (is_pointed) kept.pointed_label = label;
    if (log == nullptr) return;
    const bool enabled = (ImGui::GetItemFlags() & ImGuiItemFlags_Disabled) == 0;
    log->widgets[std::string(name)] = {ImGui::GetItemRectMin(),
                                       ImGui::GetItemRectMax(),
                                       std::string(label),
                                       std::string(help),
                                       enabled,
                                       ImGui::GetItemID()};
}

void Ui::describe(std::string_view name, std::string_view label, std::string_view help) const {
    tooltip(help);
    note(name, label, help);
}

void Ui::hover_part(std::optional<std::size_t> part) const {
    if (part) kept.hovered_part = static_cast<int>(*part);
}

void Ui::edit(Edit edit) const { desk_requests.edits.push_back(std::move(edit)); }

void Ui::one_gesture() const {
    if (ImGui::IsItemActivated()) {
        desk_requests.gesture_began = true;
        kept.gesture_open = true;
    }
    if (ImGui::IsItemDeactivated() && kept.gesture_open) {
        desk_requests.gesture_ended = true;
        kept.gesture_open = false;
    }
}

std::string Ui::keys_text(std::string_view action) const { return actions.keys_text(action); }

std::string Ui::with_keys(std::string_view sentence, std::string_view action) const {
    return std::string(sentence) + " " + keys_text(action);
}

}  // namespace beamfork
