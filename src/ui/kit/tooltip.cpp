#include "ui/kit/tooltip.hpp"

#include "ui/kit/theme.hpp"

#include <imgui.h>

namespace beamfork {

namespace {

bool wants_tooltip(std::string_view text) {
    return !text.empty()
           && ImGui::IsItemHovered(ImGuiHoveredFlags_DelayNormal | ImGuiHoveredFlags_NoSharedDelay
                                   | ImGuiHoveredFlags_AllowWhenDisabled);
}

void show_tooltip(std::string_view text) {
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(3), grid(2)});
    if (ImGui::BeginTooltip()) {
        ImGui::PushTextWrapPos(ImGui::GetFontSize() * 24);
        ImGui::TextUnformatted(text.data(), text.data() + text.size());
        ImGui::PopTextWrapPos();
        ImGui::EndTooltip();
    }
    ImGui::PopStyleVar();
}

}  // namespace

void tooltip(std::string_view text) {
    if (wants_tooltip(text)) show_tooltip(text);
}

void tooltip_beside(std::string_view text) {
    if (!wants_tooltip(text)) return;
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 high = ImGui::GetItemRectMax();
    const float middle = ImGui::GetIO().DisplaySize.x / 2;
    const bool is_at_left = (low.x + high.x) / 2 < middle;
    ImGui::SetNextWindowPos({is_at_left ? high.x + grid(3) : low.x - grid(3), low.y},
                            ImGuiCond_Always, {is_at_left ? 0.0F : 1.0F, 0.0F});
    show_tooltip(text);
}

}  // namespace beamfork
