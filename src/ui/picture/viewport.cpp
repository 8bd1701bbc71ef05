#include "ui/picture/viewport.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scene/picture/frame.hpp"
#include "scene/picture/picking.hpp"
#include "ui/handles/handle_overlay.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

constexpr float move_seconds = 0.45F;
constexpr float zoom_per_notch = 1.15F;

Viewport viewport_of(const Area& area) {
    return {std::max(1.0F, area.width), std::max(1.0F, area.height)};
}

glm::vec2 pointer_in(const Area& area) {
    const ImVec2 at = ImGui::GetIO().MousePos;
    return {at.x - area.left, at.y - area.top};
}

void advance_camera(const PictureUi& ui, float aspect) {
    if (!ui.pose.camera_is_set && ui.report != nullptr) {
        ui.pose.camera = standard_view(StandardView::overview, ui.view.frame, aspect);
        ui.pose.camera_is_set = true;
    }
    auto& move = ui.flight.move;
    if (!move) return;
    move->done = std::min(1.0F, move->done + ImGui::GetIO().DeltaTime / move_seconds);
    const float eased = move->done * move->done * (3 - 2 * move->done);
    ui.pose.camera = move->done >= 1 ? move->to : blend(move->from, move->to, eased);
    if (move->done >= 1) {
        move.reset();
    } else {
        ui.pace.animating = true;
    }
}

// The part under the pointer; asked anew only when something has moved.
int part_under_pointer(const PictureUi& ui, const Area& area) {
    const ImVec2 pixel = ImGui::GetIO().MousePos;
    auto& pick = ui.flight.pick;
    const bool is_same = pick && pick->pixel.x == pixel.x && pick->pixel.y == pixel.y
                         && pick->camera == ui.pose.camera
                         && pick->revision == ui.view.frame.revision;
    if (!is_same) {
        const ViewRay ray = ray_through(ui.pose.camera, pointer_in(area), viewport_of(area));
        const auto part = part_at(ui.view.frame, ray, ui.options);
        pick = Pick{pixel, ui.pose.camera, ui.view.frame.revision, part.value_or(-1)};
    }
    return pick->part;
}

float aspect_of(const SceneArea& scene) {
    return static_cast<float>(scene.width) / static_cast<float>(std::max(1, scene.height));
}

// So much of what is round it that a small part, such as a lens inside a tube, is seen from outside.
Bounds with_surroundings(const Bounds& bounds) {
    constexpr float least_half_mm = 45;
    const glm::vec3 half = glm::max(0.5F * (bounds.high - bounds.low), glm::vec3{least_half_mm});
    return {bounds.centre() - half, bounds.centre() + half};
}

void drag_camera(const PictureUi& ui, const Area& area) {
    const ImGuiIO& io = ImGui::GetIO();
    const glm::vec2 drag{io.MouseDelta.x, io.MouseDelta.y};
    if (drag.x == 0 && drag.y == 0) return;
    ui.flight.move.reset();
    ui.state.drag_length += std::abs(drag.x) + std::abs(drag.y);
    const bool shifts = io.MouseDown[1] || io.MouseDown[2] || io.KeyShift;
    ui.pose.camera = shifts ? pan(ui.pose.camera, drag, viewport_of(area))
                            : orbit(ui.pose.camera, drag, viewport_of(area));
}

void zoom_by_wheel(const PictureUi& ui, const Area& area) {
    const float notches = ImGui::GetIO().MouseWheel;
    if (notches == 0) return;
    ui.flight.move.reset();
    ui.pose.camera = zoom_towards(ui.pose.camera, std::pow(zoom_per_notch, notches),
                                  pointer_in(area), viewport_of(area));
}

void use_pointer(const PictureUi& ui, const Area& area) {
    if (ImGui::IsItemActivated()) ui.state.drag_length = 0;
    if (ImGui::IsItemActive()) drag_camera(ui, area);
    if (!ImGui::IsItemHovered()) return;
    zoom_by_wheel(ui, area);
    const bool was_click = ui.state.drag_length < grid(1);
    if (ImGui::IsItemActive() && !was_click) return;
    const int part = part_under_pointer(ui, area);
    if (part >= 0) ui.hover_part(static_cast<std::size_t>(part));
    if (ImGui::IsMouseReleased(0) && ImGui::IsItemDeactivated() && was_click) {
        ui.selected_part = part >= 0 ? std::optional(static_cast<std::size_t>(part)) : std::nullopt;
    }
    if (ImGui::IsMouseDoubleClicked(0) && part >= 0) {
        ui.selected_part = static_cast<std::size_t>(part);
        frame_selection(ui);
    }
}

}  // namespace

void move_camera(const PictureUi& ui, const Camera& to) {
    ui.flight.move = CameraMove{ui.pose.camera, to, 0};
}

void show_view(const PictureUi& ui, StandardView view) {
    move_camera(ui, standard_view(view, ui.view.frame, aspect_of(ui.asks.scene)));
}

void frame_selection(const PictureUi& ui) {
    const auto part = ui.selected_part;
    const auto& bounds = ui.view.frame.part_bounds;
    const bool has_body = part && *part < bounds.size() && bounds[*part].radius() > 0;
    const Bounds wanted = has_body ? with_surroundings(bounds[*part]) : ui.view.frame.bounds;
    move_camera(ui, frame_bounds(ui.pose.camera, wanted, aspect_of(ui.asks.scene), 0.3F));
}

namespace {

// The right half of a picture that is split: it turns with the left one, and nothing in it can be picked.
void draw_other_half(const PictureUi& ui, const Area& area) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (ui.view.other_texture != ImTextureID{})
        list.AddImage(ui.view.other_texture, area.corner(), {area.right(), area.bottom()}, {0, 1},
                      {1, 0});
    ImGui::SetCursorScreenPos(area.corner());
    ImGui::SetNextItemAllowOverlap();
    ImGui::InvisibleButton("picture/other",
                           {std::max(1.0F, area.width), std::max(1.0F, area.height)},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight
                               | ImGuiButtonFlags_MouseButtonMiddle);
    ui.note("picture/other", "The other setup",
            "Drag: turn both. Right drag: shift. Wheel: nearer.");
    if (ImGui::IsItemActive()) drag_camera(ui, area);
    if (ImGui::IsItemHovered()) zoom_by_wheel(ui, area);
    draw_names(ui, area, *ui.view.other_frame);
    list.AddLine(area.corner(), {area.left, area.bottom()}, colour(Tone::text_dim),
                 std::max(1.0F, grid(0.5F)));
}

Area left_half(const Area& area) {
    return {area.left, area.top, std::floor(area.width / 2), area.height};
}
Area right_half(const Area& area) {
    const float left = std::floor(area.width / 2);
    return {area.left + left, area.top, area.width - left, area.height};
}

// What was seen whole is seen whole in a half: from farther away, and nearer again afterwards.
void follow_split(const PictureUi& ui) {
    ui.asks.shows_other_half = ui.view.other_frame != nullptr;
    const bool was_split = std::exchange(ui.state.is_split, ui.asks.shows_other_half);
    if (was_split == ui.state.is_split || !ui.pose.camera_is_set) return;
    constexpr float farther = 1.5F;
    Camera to = ui.flight.move ? ui.flight.move->to : ui.pose.camera;
    to.distance_mm *= ui.state.is_split ? farther : 1 / farther;
    move_camera(ui, to);
}

}  // namespace

HandleUi handle_ui(const PictureUi& ui, HandleState& handles) {
    return {ui.shared(), handles, ui.pose.camera, ui.options.apart == 0, foot_height()};
}

void draw_viewport(const PictureUi& ui, HandleState& handle_state, const Area& whole) {
    const HandleUi handles = handle_ui(ui, handle_state);
    if (handles.state.drag) ui.flight.move.reset();  // who holds a knob holds the view too
    follow_split(ui);
    const Area area = ui.asks.shows_other_half ? left_half(whole) : whole;
    const ImVec2 pixels = ImGui::GetIO().DisplayFramebufferScale;
    ui.asks.scene = {std::max(1, static_cast<int>(std::lround(area.width * pixels.x))),
                     std::max(1, static_cast<int>(std::lround(area.height * pixels.y)))};
    advance_camera(ui, viewport_of(area).aspect());
    follow_held_handle(handles);

    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    begin_area("picture", whole, Tone::ground,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse
                   | ImGuiWindowFlags_NoNavInputs);
    ImGui::PopStyleVar();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (ui.view.texture != ImTextureID{}) {
        list.AddImage(ui.view.texture, area.corner(), {area.right(), area.bottom()}, {0, 1},
                      {1, 0});
    }
    ImGui::SetNextItemAllowOverlap();  // knobs lie on it
    ImGui::InvisibleButton("picture/canvas",
                           {std::max(1.0F, area.width), std::max(1.0F, area.height)},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight
                               | ImGuiButtonFlags_MouseButtonMiddle);
    // The foot of the window says the same while nothing is under the pointer.
    ui.note("picture/canvas", "The picture",
            "Drag: turn. Right drag: shift. Wheel: nearer. Click: select. By keys: Shift with the "
            "arrows, Ctrl with the arrows, + and -.");
    use_pointer(ui, area);
    const std::vector<Knob> knobs = visible_knobs(handles, area);
    draw_viewport_words(ui, handles, area, knobs);
    draw_knobs(handles, area, knobs);
    if (ui.asks.shows_other_half) draw_other_half(ui, right_half(whole));
    draw_scale(ui, whole, draw_view_bar(ui, whole));
    ImGui::End();
}

}  // namespace beamfork
