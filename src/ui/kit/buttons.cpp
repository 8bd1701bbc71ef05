#include "ui/kit/buttons.hpp"

#include <algorithm>
#include <string>

#include "ui/kit/lettering.hpp"

#include <imgui_internal.h>  // GetItemFlags

namespace beamfork {

namespace {

// Position, hover and press of a button that draws itself.
struct Pressed {
    bool pressed;
    bool hot;
    ImVec2 low;
    ImVec2 high;
};

bool is_nav_focused() { return ImGui::IsItemFocused() && ImGui::GetIO().NavVisible; }

Pressed plain_button(std::string_view name, ImVec2 size, bool enabled) {
    const std::string id(name);
    ImGui::BeginDisabled(!enabled);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const bool is_hit = ImGui::InvisibleButton(id.c_str(), size);
    // A button may keep the keyboard while it becomes disabled, such as Undo behind the last step: Space would
    // still press it.
    const bool is_disabled = (ImGui::GetItemFlags() & ImGuiItemFlags_Disabled) != 0;
    const bool pressed = is_hit && !is_disabled;
    const bool hot =
        !is_disabled && (ImGui::IsItemHovered() || ImGui::IsItemActive() || is_nav_focused());
    ImGui::EndDisabled();
    return {pressed, hot, low, {low.x + size.x, low.y + size.y}};
}

}  // namespace

bool text_button(const Ui& ui,
                 std::string_view name,
                 std::string_view label,
                 std::string_view help,
                 bool enabled,
                 bool is_on) {
    const ImVec2 text = text_size(label, TextFace::regular);
    const ImVec2 size{text.x + grid(4), ImGui::GetFrameHeight()};
    const Pressed button = plain_button(name, size, enabled);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Tone ground = button.hot || is_on ? Tone::raised_hot : Tone::raised;
    list.AddRectFilled(button.low, button.high, colour(ground, enabled ? 1 : 0.5F), grid(1));
    if (is_on)
        list.AddRect(button.low, button.high, colour(Tone::accent), grid(1), 0,
                     std::max(1.0F, grid(0.25F)));
    text_at(list, {button.low.x + (size.x - text.x) / 2, button.low.y + (size.y - text.y) / 2},
            label, colour(Tone::text, enabled ? 1 : 0.45F));
    ui.describe(name, label, help);
    return button.pressed;
}

bool icon_button(
    const Ui& ui, std::string_view name, Icon icon, std::string_view help, bool enabled) {
    const float side = ImGui::GetFrameHeight();
    const Pressed button = plain_button(name, {side, side}, enabled);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (button.hot) list.AddRectFilled(button.low, button.high, colour(Tone::raised_hot), grid(1));
    draw_icon(list, icon, {button.low.x + side / 2, button.low.y + side / 2}, side * 0.52F,
              colour(button.hot ? Tone::text : Tone::text_dim, enabled ? 1 : 0.4F));
    ui.describe(name, help, help);
    return button.pressed;
}

std::size_t segments(const Ui& ui,
                     std::string_view name,
                     std::span<const std::string_view> words,
                     std::span<const std::string_view> helps,
                     std::size_t chosen,
                     bool may_wrap) {
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {std::max(1.0F, grid(0.25F)), grid(1)});
    std::size_t now = chosen;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) ImGui::SameLine();
        const float wanted = text_size(words[i], TextFace::regular).x + grid(4);
        if (may_wrap && i > 0 && ImGui::GetContentRegionAvail().x < wanted) ImGui::NewLine();
        const std::string id = std::string(name) + "/" + std::string(words[i]);
        if (text_button(ui, id, words[i], helps[i], true, i == chosen)) now = i;
    }
    ImGui::PopStyleVar();
    return now;
}

}  // namespace beamfork
