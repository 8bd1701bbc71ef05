#include "ui/shell/splitters.hpp"

#include <algorithm>

#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

enum class Way { sideways, up_and_down };

// What the arrow keys move a gap by that has the keyboard, in pixels.
float step_by_keys(Way way) {
    if (!ImGui::IsWindowFocused()) return 0;
    const bool is_sideways = way == Way::sideways;
    const float step = font(TextFace::regular)->FontSize;
    float by = 0;
    if (ImGui::IsKeyPressed(is_sideways ? ImGuiKey_RightArrow : ImGuiKey_DownArrow)) by += step;
    if (ImGui::IsKeyPressed(is_sideways ? ImGuiKey_LeftArrow : ImGuiKey_UpArrow)) by -= step;
    return by;
}

// How far it was moved along its way since the last frame, by mouse or keys, in pixels.
float drag_of(const ShellUi& ui, const char* name, const Area& area, Way way) {
    if (area.width <= 0 || area.height <= 0) return 0;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    begin_area(name, area, Tone::ground, ImGuiWindowFlags_NoScrollbar);
    ImGui::PopStyleVar();
    ImGui::InvisibleButton(name, area.size());
    const bool hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    const bool active = ImGui::IsItemActive();
    const std::string help =
        ui.with_keys("Drag it, or give it the keyboard and use the arrows.", "window/gap");
    ui.describe(name, way == Way::sideways ? "Gap: left or right" : "Gap: up or down", help);
    const bool has_keyboard = ImGui::IsWindowFocused() && ImGui::GetIO().NavVisible;
    if (hot)
        ImGui::SetMouseCursor(way == Way::sideways ? ImGuiMouseCursor_ResizeEW
                                                   : ImGuiMouseCursor_ResizeNS);
    if (hot || has_keyboard) {
        ImGui::GetWindowDrawList()->AddRectFilled(
            area.corner(), {area.right(), area.bottom()},
            colour(has_keyboard ? Tone::accent : Tone::raised_hot));
    }
    const float by_keys = step_by_keys(way);
    ImGui::End();
    if (by_keys != 0) return by_keys;
    const ImVec2 moved = ImGui::GetIO().MouseDelta;
    if (!active) return 0;
    return way == Way::sideways ? moved.x : moved.y;
}

}  // namespace

void draw_splitters(const ShellUi& ui, const Layout& layout) {
    LayoutSession& session = ui.layout;
    const float text = font(TextFace::regular)->FontSize;
    const float strip = std::max(1.0F, layout.strip_splitter.width);
    const float column = std::max(1.0F, layout.train.height + layout.part.height);
    const float hand = session.parts_at_left ? -1 : 1;  // the sides have changed
    session.column_width -=
        hand * drag_of(ui, "splitter/column", layout.column_splitter, Way::sideways) / text;
    session.findings_width +=
        hand * drag_of(ui, "splitter/findings", layout.findings_splitter, Way::sideways) / text;
    session.strip_height -=
        drag_of(ui, "splitter/strip", layout.strip_splitter, Way::up_and_down) / text;
    session.train_share +=
        drag_of(ui, "splitter/train", layout.train_splitter, Way::up_and_down) / column;
    const float budget =
        drag_of(ui, "splitter/budget", layout.budget_splitter, Way::sideways) / strip;
    session.budget_share += budget;
    session.light_share -= budget;
    session.light_share +=
        drag_of(ui, "splitter/light", layout.light_splitter, Way::sideways) / strip;
}

}  // namespace beamfork
