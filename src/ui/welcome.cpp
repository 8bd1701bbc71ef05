#include <algorithm>

#include "ui/viewport.hpp"
#include "ui/widgets.hpp"

namespace beamfork {

void draw_welcome(const Ui& ui, const Area& area) {
    if (ui.session.welcome_dismissed || area.width < grid(90)) return;
    const float width = std::min(grid(150), area.width - grid(8));
    const float below = ImGui::GetFrameHeight() + grid(6);
    const float height = ImGui::GetTextLineHeight() * 2 + grid(4);
    ImGui::SetCursorScreenPos({area.left + grid(2), area.bottom() - below - height});
    ImGui::PushStyleColor(ImGuiCol_ChildBg, colour(Tone::raised, 0.94F));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(3), grid(1.5F)});
    ImGui::BeginChild("picture/welcome", {width, height}, ImGuiChildFlags_AlwaysUseWindowPadding,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    const float side = ImGui::GetFrameHeight();
    const float left = ImGui::GetCursorPosX();
    ImGui::PushTextWrapPos(width - side - grid(4));
    ImGui::TextUnformatted(
        "Welcome. Drag to turn the picture, roll the wheel to come nearer, click a part and move its sliders. Begin with "
        "the finding at the top left; “Setup” holds more examples.");
    ImGui::PopTextWrapPos();
    ui.note("welcome", "Welcome");
    ImGui::SetCursorPos({std::max(left, width - side - grid(2)), grid(1.5F)});
    if (icon_button(ui, "welcome/close", Icon::close, "Do not show this again.")) ui.session.welcome_dismissed = true;
    ImGui::EndChild();
}

}  // namespace beamfork
