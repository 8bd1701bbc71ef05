#include "ui/shell/ui.hpp"

#include "ui/kit/widgets.hpp"

#include <imgui_internal.h>  // GetItemFlags

namespace beamfork {

void Ui::note(std::string_view name, std::string_view label, std::string_view help) const {
    const bool is_pointed =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    if (is_pointed) state.pointed_label = label;
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
    if (part) state.hovered_part = static_cast<int>(*part);
}

void Ui::one_gesture() const {
    if (ImGui::IsItemActivated()) {
        requests.gesture_began = true;
        state.gesture_open = true;
    }
    if (ImGui::IsItemDeactivated() && state.gesture_open) {
        requests.gesture_ended = true;
        state.gesture_open = false;
    }
}

}  // namespace beamfork
