#include "scene/picture/picture.hpp"

#include <algorithm>

#include "scene/picture/fingerprint.hpp"
#include "scene/picture/picture_input.hpp"

namespace beamfork {

namespace {

Bounds united(const Bounds& a, const Bounds& b) {
    return {glm::min(a.low, b.low), glm::max(a.high, b.high)};
}

bool is_empty(const Bounds& bounds) { return bounds.low == bounds.high; }

void find_bounds(Frame& frame, const PictureInput& input) {
    bool has_any = false;
    bool has_rear = false;
    bool has_head = false;
    for (std::size_t i = 0; i < frame.part_bounds.size(); ++i) {
        const Bounds& part = frame.part_bounds[i];
        if (is_empty(part)) continue;
        frame.bounds = has_any ? united(frame.bounds, part) : part;
        has_any = true;
        const Role role = role_of(input.setup.parts[i]);
        if (role < Role::focuser) continue;
        frame.head_bounds = has_head ? united(frame.head_bounds, part) : part;
        has_head = true;
        if (role == Role::focuser || role == Role::observer) continue;
        frame.rear_bounds = has_rear ? united(frame.rear_bounds, part) : part;
        has_rear = true;
    }
    if (!has_rear) frame.rear_bounds = frame.bounds;
    if (!has_head) frame.head_bounds = frame.rear_bounds;
}

}  // namespace

Frame build_frame(const Setup& setup, const Report& report, const PictureEffort& effort) {
    const PictureInput input{setup, report, effort};
    Frame frame;
    add_bodies(frame, input);
    add_splitting_face(frame, input);
    add_openings(frame, input);
    add_light(frame, input);
    add_field_stops(frame, input);
    add_focus_gap(frame, input);
    add_drawtube_scale(frame, input);
    add_part_labels(frame, input);
    add_eyes(frame, input);
    finish_frame(frame, input);
    return frame;
}

void finish_frame(Frame& frame, const PictureInput& input) {
    std::stable_sort(frame.labels.begin(), frame.labels.end(),
                     [](const Label& a, const Label& b) { return a.priority < b.priority; });
    find_bounds(frame, input);
    frame.eye_axis = glm::vec3(input.train().path(Eye::left).world_from_field_stop.z());
    frame.revision = fingerprint(frame);
}

}  // namespace beamfork
