#include "ui/kit/choosers.hpp"

#include <algorithm>

#include "ui/kit/icons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/theme.hpp"

namespace beamfork {

void place_popup_below() {
    ImGui::SetNextWindowPos({ImGui::GetItemRectMin().x, ImGui::GetItemRectMax().y + grid(0.5F)});
}

void place_popup_above() {
    const ImVec2 low = ImGui::GetItemRectMin();
    ImGui::SetNextWindowPos({low.x, low.y - grid(1)}, ImGuiCond_Always, {0, 1});
}

bool begin_chooser(const char* id, const std::string& chosen, float width) {
    ImGui::SetNextItemWidth(width);
    const float sign_room = grid(5);
    const float room = width - sign_room - ImGui::GetStyle().FramePadding.x;
    const bool is_open =
        ImGui::BeginCombo(id, shortened(chosen, room).c_str(),
                          ImGuiComboFlags_NoArrowButton | ImGuiComboFlags_HeightLarge);
    if (!is_open) {
        const ImVec2 low = ImGui::GetItemRectMin();
        const ImVec2 high = ImGui::GetItemRectMax();
        draw_icon(*ImGui::GetWindowDrawList(), Icon::down,
                  {high.x - sign_room / 2, (low.y + high.y) / 2}, grid(2.25F),
                  colour(Tone::text_dim));
    }
    return is_open;
}

bool chooser_entry(const std::string& word, bool is_chosen) {
    const bool is_picked = ImGui::Selectable(word.c_str(), is_chosen);
    if (is_chosen && ImGui::IsWindowAppearing()) {
        ImGui::SetItemDefaultFocus();
        ImGui::SetScrollHereY();
    }
    return is_picked;
}

bool begin_question(const char* title, float width) {
    const ImVec2 window = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({window.x / 2, window.y / 2}, ImGuiCond_Always, {0.5F, 0.5F});
    ImGui::SetNextWindowSize({std::min(width, window.x - grid(4)), 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(5), grid(4)});
    const bool is_open =
        ImGui::BeginPopupModal(title, nullptr,
                               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize
                                   | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
    ImGui::PopStyleVar();
    return is_open;
}

}  // namespace beamfork
