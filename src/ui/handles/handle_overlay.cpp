#include "ui/handles/handle_overlay.hpp"

#include <algorithm>
#include <cmath>

#include "document/edit.hpp"
#include "ui/handles/handle_knob.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/theme.hpp"

namespace beamfork {

namespace {

float stalk() { return grid(7); }
Viewport viewport_in(const Area& area) {
    return {std::max(1.0F, area.width), std::max(1.0F, area.height)};
}
Steps steps_asked() { return ImGui::GetIO().KeyShift ? Steps::fine : Steps::halves; }

std::string knob_name(const Knob& knob) {
    return "handle/" + std::to_string(knob.part) + "/" + std::to_string(knob.index);
}

bool is_held(const HandleUi& ui, std::size_t part, std::size_t index) {
    const auto& drag = ui.state.drag;
    return drag && drag->part == part && drag->index == index;
}

// The selected part, and the one that is or was just pointed at: the way to its knob leads over the ground.
std::vector<std::size_t> parts_with_knobs(const HandleUi& ui) {
    std::vector<std::size_t> parts;
    const auto add = [&](std::size_t part) {
        if (part < ui.setup().parts.size()
            && std::find(parts.begin(), parts.end(), part) == parts.end())
            parts.push_back(part);
    };
    if (ui.state.drag) return {ui.state.drag->part};
    if (ui.selected_part) add(*ui.selected_part);
    if (ui.kept.hovered_part_before >= 0) ui.state.knobs_of = ui.kept.hovered_part_before;
    if (ui.state.knobs_of >= 0) add(static_cast<std::size_t>(ui.state.knobs_of));
    return parts;
}

bool is_pointer_near(const Knob& knob, glm::vec2 pointer) {
    const glm::vec2 stalk_way = knob.view.knob - knob.view.place;
    const float t = std::clamp(glm::dot(pointer - knob.view.place, stalk_way)
                                   / std::max(1.0F, glm::dot(stalk_way, stalk_way)),
                               0.0F, 1.0F);
    return glm::distance(pointer, knob.view.place + t * stalk_way) < grid(8);
}

ImGuiMouseCursor cursor_along(glm::vec2 along) {
    constexpr float diagonal = 0.4F;  // about 24 degrees
    if (std::abs(along.y) < diagonal) return ImGuiMouseCursor_ResizeEW;
    if (std::abs(along.x) < diagonal) return ImGuiMouseCursor_ResizeNS;
    return along.x * along.y > 0 ? ImGuiMouseCursor_ResizeNWSE : ImGuiMouseCursor_ResizeNESW;
}

void set_length(const Ui& ui, const MovableLength& now, double value) {
    if (value != now.value) ui.edit(SetField{now.part, now.key, value});
}

void take_hold(const HandleUi& ui, const Area& area, const Knob& knob, glm::vec2 pointer) {
    const Handle& handle = knob.handle;
    ui.selected_part = knob.part;
    const AxisDrag way(handle.line, handle.place_of(handle.length.value), ui.camera,
                       viewport_in(area), pointer);
    ui.state.drag =
        HandleDrag{knob.part, knob.index, handle,   HeldLength(handle.length, steps_asked()),
                   way,       ui.camera,  knob.view};
}

void let_go(const HandleUi& ui) {
    const HandleDrag& drag = *ui.state.drag;
    const MovableLength& at_press = drag.held.at_press();
    ui.edit(SetField{at_press.part, at_press.key, at_press.stated});
    ui.camera = drag.camera;
    if (ImGui::IsItemActive()) let_go_of_widget();
    ui.state.drag.reset();
}

void drag_knob(const HandleUi& ui, const Area& area, const Knob& knob) {
    const ImGuiIO& io = ImGui::GetIO();
    const glm::vec2 pointer{io.MousePos.x - area.left, io.MousePos.y - area.top};
    if (ImGui::IsItemActivated()) take_hold(ui, area, knob, pointer);
    if (!is_held(ui, knob.part, knob.index)) return;
    HandleDrag& drag = *ui.state.drag;
    if (ImGui::IsKeyPressed(ImGuiKey_Escape, false)) return let_go(ui);
    const double by = drag.way.moved(pointer) / drag.handle.per_value;
    if (ImGui::IsItemActive() && (by != 0 || knob.handle.length.value != drag.handle.length.value))
        set_length(ui, knob.handle.length, drag.held.value_after(by, steps_asked()));
    if (ImGui::IsItemDeactivated()) ui.state.drag.reset();
}

void draw_knob(const HandleUi& ui, const Area& area, const Knob& knob) {
    const MovableLength& length = knob.handle.length;
    const std::string name = knob_name(knob);
    const float side = grid(9);
    const ImVec2 middle{area.left + knob.view.knob.x, area.top + knob.view.knob.y};
    ImGui::SetCursorScreenPos({middle.x - side / 2, middle.y - side / 2});
    ImGui::InvisibleButton(name.c_str(), {side, side});
    ui.one_gesture();
    const bool is_pointed_at = ImGui::IsItemHovered();
    if (is_pointed_at && length.can_be_let_go && ImGui::IsMouseDoubleClicked(0)) {
        ui.state.drag.reset();
        ui.edit(SetField{length.part, length.key, FieldValue{}});
    } else {
        drag_knob(ui, area, knob);
    }
    const bool held = is_held(ui, knob.part, knob.index);
    const std::string help = length.label + ": " + length_text(length.value) + ". " + length.how;
    ui.note(name, length.label, help);
    if (is_pointed_at || held) {
        ui.hover_part(knob.part);
        ImGui::SetMouseCursor(cursor_along(knob.view.along));
        paint_hint(ui, area, knob, held);
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    paint_stalk(list, area, knob.view);
    paint_knob(list, middle, knob.view.along,
               {is_pointed_at, held, length.value <= length.low, length.value >= length.high});
}

}  // namespace

void follow_held_handle(const HandleUi& ui) {
    if (!ui.state.drag) return;
    if (ui.report == nullptr || !ui.kept.gesture_open) return ui.state.drag.reset();
    const HandleDrag& drag = *ui.state.drag;
    const auto handles = drag.part < ui.setup().parts.size()
                             ? handles_of(ui.setup(), *ui.report, drag.part)
                             : std::vector<Handle>{};
    if (drag.index >= handles.size()) return ui.state.drag.reset();
    ui.camera = drag.camera;
    ui.camera.target += glm::vec3(handles[drag.index].stays - drag.handle.stays);
}

std::vector<Knob> visible_knobs(const HandleUi& ui, const Area& area) {
    std::vector<Knob> knobs;
    if (ui.report == nullptr || !ui.is_together) return knobs;
    for (const std::size_t part : parts_with_knobs(ui)) {
        auto handles = handles_of(ui.setup(), *ui.report, part);
        for (std::size_t i = 0; i < handles.size(); ++i) {
            auto view = view_of(handles[i], ui.camera, viewport_in(area), stalk());
            const bool held = is_held(ui, part, i);
            if (!view && held) view = ui.state.drag->seen;
            if (!view) continue;
            if (held) ui.state.drag->seen = *view;
            view->knob.y = std::min(view->knob.y, std::max(0.0F, area.height - ui.foot - grid(3)));
            knobs.push_back({part, i, std::move(handles[i]), *view});
        }
    }
    return knobs;
}

std::vector<PixelBox> rooms_of(const HandleUi& ui, const Area& area, std::span<const Knob> knobs) {
    std::vector<PixelBox> rooms;
    for (const Knob& knob : knobs) {
        const glm::vec2 half{grid(5)};
        rooms.push_back({glm::min(knob.view.knob - half, knob.view.rim),
                         glm::max(knob.view.knob + half, knob.view.rim)});
        if (is_held(ui, knob.part, knob.index)) rooms.push_back(hint_room(ui, area, knob, true));
    }
    return rooms;
}

void draw_knobs(const HandleUi& ui, const Area& area, std::span<const Knob> knobs) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const glm::vec2 pointer{mouse.x - area.left, mouse.y - area.top};
    bool is_near_hovered = false;
    for (const Knob& knob : knobs) {
        draw_knob(ui, area, knob);
        if (static_cast<int>(knob.part) == ui.state.knobs_of)
            is_near_hovered = is_near_hovered || is_pointer_near(knob, pointer);
    }
    if (!is_near_hovered && ui.kept.hovered_part < 0) ui.state.knobs_of = -1;
}

bool can_move_handle(const Ui& ui) {
    return ui.selected_part && ui.report != nullptr
           && movable_length(ui.setup(), *ui.report, *ui.selected_part).has_value();
}

void move_handle(const Ui& ui, double by, Steps steps) {
    const auto length = movable_length(ui.setup(), *ui.report, ui.selected_part.value());
    if (!length) return;
    MovableLength plain = *length;
    plain.landmark.reset();  // a step by keyboard never stands still
    set_length(ui, *length, moved_value(plain, by, steps));
}

}  // namespace beamfork
