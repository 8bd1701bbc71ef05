#include "ui/picture/moving_view.hpp"

#include <algorithm>

#include "scene/picture/light_arrival.hpp"
#include "scene/picture/pulled_apart.hpp"

namespace beamfork {

namespace {

constexpr float pulling_seconds = 1.2F;
constexpr float longest_step_s = 0.1F;  // after a rest the packets go on where they were

void advance_light(const PictureUi& ui) {
    ViewOptions& view = ui.options;
    if (!view.light_runs()) return;
    const float step = std::min(ImGui::GetIO().DeltaTime, longest_step_s);
    view.light_front_mm = packets_after(view.light_front_mm, view.light_speed_mm_s, step);
    ui.pace.light_runs = true;
}

// The camera goes along until somebody turns the picture.
void advance_camera(const PictureUi& ui, ApartMove& move, float share) {
    if (!move.camera) return;
    if (!(ui.pose.camera == move.camera->seen)) {
        move.camera.reset();
        return;
    }
    move.camera->seen = ui.pose.camera = blend(move.camera->from, move.camera->to, share);
}

void advance_parts(const PictureUi& ui) {
    auto& move = ui.state.apart_move;
    if (!move) return;
    move->done = std::min(1.0F, move->done + ImGui::GetIO().DeltaTime / pulling_seconds);
    const float share = apart_after(move->done);
    ui.options.apart = move->done >= 1 ? move->to : move->from + share * (move->to - move->from);
    advance_camera(ui, *move, share);
    ui.pace.animating = true;
    if (move->done >= 1) move.reset();
}

float picture_aspect(const PictureUi& ui) {
    const SceneArea& scene = ui.state.size;
    return static_cast<float>(std::max(1, scene.width))
           / static_cast<float>(std::max(1, scene.height));
}

}  // namespace

void advance_moving_view(const PictureUi& ui) {
    advance_light(ui);
    advance_parts(ui);
}

void show_moving_view(const PictureUi& ui, const ViewOptions& wanted) {
    ViewOptions& view = ui.options;
    view.paint_pupil = wanted.paint_pupil;
    if (view.light_moves != wanted.light_moves) view.light_is_held = wanted.light_is_held;
    view.light_moves = wanted.light_moves;
    const float goal = ui.state.apart_move ? ui.state.apart_move->to : view.apart;
    if (goal != wanted.apart)
        ui.state.apart_move = ApartMove{view.apart, wanted.apart, 0, std::nullopt};
}

void move_light_or_not(const PictureUi& ui) {
    ViewOptions& view = ui.options;
    view.light_moves = !view.light_moves;
    view.light_is_held = false;
}

void pull_apart_or_back(const PictureUi& ui) {
    auto& move = ui.state.apart_move;
    const float now = ui.options.apart;
    const bool goes_apart = (move ? move->to : now) < 0.5F;
    const Camera& camera = ui.pose.camera;
    ApartMove next{now, goes_apart ? 1.0F : 0.0F, 0, std::nullopt};
    ui.flight.move.reset();
    if (!goes_apart && ui.state.camera_together) {
        next.camera = ApartMove::Flight{camera, *ui.state.camera_together, camera};
        ui.state.camera_together.reset();
    } else if (goes_apart && ui.report != nullptr) {
        ui.state.camera_together = camera;
        const Bounds bounds = pulled_apart(ui.setup(), *ui.report, 1).rear_bounds;
        const Camera to = frame_bounds(camera, bounds, picture_aspect(ui), 0.1F);
        next.camera = ApartMove::Flight{camera, to, camera};
    }
    move = next;
}

}  // namespace beamfork
