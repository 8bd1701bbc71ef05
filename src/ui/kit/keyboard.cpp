#include "ui/kit/keyboard.hpp"

#include <algorithm>
#include <cmath>

#include "ui/kit/theme.hpp"

#include <imgui_internal.h>

namespace beamfork {

bool key_of_last_widget(ImGuiKey key) {
    const ImGuiID id = ImGui::GetItemID();
    ImGui::SetKeyOwner(key, id);
    return ImGui::IsKeyPressed(key, id, ImGuiInputFlags_Repeat);
}

void keep_up_and_down() {
    if (ImGui::IsItemActive())
        ImGui::GetCurrentContext()->ActiveIdUsingNavDirMask |=
            1 << ImGuiDir_Up | 1 << ImGuiDir_Down;
}

void keep_wheel() { ImGui::SetItemKeyOwner(ImGuiKey_MouseWheelY); }

bool is_typed_into(const char* id) { return ImGui::GetActiveID() == ImGui::GetID(id); }

void let_go_of_widget() { ImGui::ClearActiveID(); }

std::string present_window() { return ImGui::GetCurrentWindow()->Name; }

std::vector<std::string> drawn_of(std::vector<std::string> windows) {
    std::erase_if(windows, [](const std::string& name) {
        const ImGuiWindow* window = ImGui::FindWindowByName(name.c_str());
        return window == nullptr || !window->WasActive;
    });
    return windows;
}

std::optional<std::size_t> with_keyboard(const std::vector<std::string>& windows) {
    const ImGuiWindow* window = ImGui::GetCurrentContext()->NavWindow;
    for (; window != nullptr; window = window->ParentWindow) {
        const auto found = std::find(windows.begin(), windows.end(), window->Name);
        if (found != windows.end()) return static_cast<std::size_t>(found - windows.begin());
    }
    return {};
}

bool give_keyboard(const std::string& name) {
    ImGuiWindow* window = ImGui::FindWindowByName(name.c_str());
    if (window == nullptr || !window->WasActive) return false;
    ImGui::SetWindowFocus(name.c_str());
    ImGui::NavInitWindow(window, true);
    show_keyboard();
    return true;
}

void show_keyboard() { ImGui::GetCurrentContext()->NavDisableHighlight = false; }

void draw_keyboard_frame() {
    const ImGuiContext& context = *ImGui::GetCurrentContext();
    ImGuiWindow* window = context.NavWindow;
    if (window == nullptr || !ImGui::GetIO().NavVisible || context.NavId == 0) return;
    if (!context.NavIdIsAlive || !window->Active) return;
    ImRect frame = ImGui::WindowRectRelToAbs(window, window->NavRectRel[context.NavLayer]);
    frame.Expand(std::round(grid(0.5F)));
    ImRect seen = window->RootWindow->OuterRectClipped;
    if (window != window->RootWindow) {  // a list that scrolls
        seen.Min.y = window->InnerClipRect.Min.y - grid(0.5F);
        seen.Max.y = window->InnerClipRect.Max.y + grid(0.5F);
    }
    frame.ClipWithFull(seen);
    window->DrawList->PushClipRect(seen.Min, seen.Max, false);
    window->DrawList->AddRect(frame.Min, frame.Max, colour(Tone::accent), grid(1), 0,
                              std::max(2.0F, grid(0.5F)));
    window->DrawList->PopClipRect();
}

std::optional<double> seconds_to_tooltip() {
    const ImGuiContext& context = *ImGui::GetCurrentContext();
    const float left = ImGui::GetStyle().HoverDelayNormal - context.HoverItemDelayTimer;
    if (context.HoverItemDelayId == 0 || left <= 0) return {};
    return left;
}

}  // namespace beamfork
