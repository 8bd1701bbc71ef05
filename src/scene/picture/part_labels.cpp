// Names by the parts, and the exit pupils with the names of the eyes that belong there.
#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture_input.hpp"
#include "trace/forked_ray.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// The smaller stays when there is no room: the head is what it is all about, adapters can do without.
int name_priority(Role role) {
    switch (role) {
    case Role::splitter: return 4;
    case Role::telescope: return 7;
    case Role::focuser: return 8;
    case Role::eyepiece: return 9;
    default: return 10;
    }
}

// In the tube, not far from where its light leaves it: on the side of which there is more.
Point place_in_tube(const Bounds& tube, const Point& exit) {
    constexpr double not_far_mm = 160;
    const double before = exit.z - double{tube.low.z};
    const double behind = double{tube.high.z} - exit.z;
    const double along =
        before > behind ? -std::min(not_far_mm, 0.4 * before) : std::min(not_far_mm, 0.4 * behind);
    return {tube.centre().x, tube.centre().y, exit.z + along};
}

// Where the axis is folded, the corner; else its middle.
Point middle_of(const Pose& entry, const Pose& exit) {
    const Direction through = exit.origin - entry.origin;
    const bool is_folded = glm::dot(entry.z(), exit.z()) < 0.9;
    return entry.origin + (is_folded ? glm::dot(through, entry.z()) * entry.z() : 0.5 * through);
}

// On the axis: in the head where the light is divided, in the eyepiece behind its field stop.
Point name_place(const Frame& frame, const Train& train, const PlacedPart& placed, Role role) {
    switch (role) {
    case Role::telescope:
        return place_in_tube(frame.part_bounds.at(placed.part), placed.world_from_exit.origin);
    case Role::splitter:
        return train.path(Eye::left).surfaces[dividing_surface(train)].world_from_surface.origin;
    case Role::eyepiece: return placed.world_from_exit.point_out({0, 0, 15});
    case Role::focuser: return Point(frame.part_bounds.at(placed.part).centre());
    default: return middle_of(placed.world_from_part, placed.world_from_exit);
    }
}

void add_twin(Frame& frame, const PlacedPart& placed, Role role) {
    if (role != Role::eyepiece) return;
    for (Label& label : frame.labels)
        if (label.role == LabelRole::part && label.part == static_cast<int>(placed.part))
            label.twin = glm::vec3(placed.world_from_exit.point_out({0, 0, 15}));
}

// Where the eyepiece puts the exit pupil: its eye lens, and the eye relief behind it.
double eye_point_behind_stop(const EyepiecePair& eyepiece) {
    return eyepiece.field_stop_depth.value + std::max(18.0, eyepiece.focal_length.value) + 12
           + eyepiece.eye_relief.value;
}

}  // namespace

void add_part_labels(Frame& frame, const PictureInput& input) {
    const Train& train = input.train();
    int along = 0;
    for (const PlacedPart& placed : train.placed) {
        if (placed.eye == Eye::right) {
            add_twin(frame, placed, role_of(input.setup.parts[placed.part]));
            continue;
        }
        const Part& part = input.setup.parts[placed.part];
        const Role role = role_of(part);
        frame.labels.push_back({.at = glm::vec3(name_place(frame, train, placed, role)),
                                .text = part.name,
                                .role = LabelRole::part,
                                .part = static_cast<int>(placed.part),
                                .priority = name_priority(role),
                                .along = along++});
    }
    const auto& eyepiece = part_as<EyepiecePair>(input.setup, train.choice.eyepiece);
    const double distance = eye_point_behind_stop(eyepiece);
    for (const Eye eye : both_eyes) {
        const Point at = train.path(eye).world_from_field_stop.point_out({0, 0, distance});
        const Pose pupil{train.path(eye).world_from_field_stop.axes, at};
        const Line rim{{}, {}, arm_role(eye), 1.5F, false, false};
        add_outline(frame.lines, circle(pupil, input.report.magnification.exit_pupil.value / 2, 24),
                    rim);
        frame.labels.push_back({glm::vec3(at), fmt::format("{} eye", name_of(eye)),
                                eye == Eye::left ? LabelRole::left_eye : LabelRole::right_eye, -1,
                                5});
    }
}

}  // namespace beamfork
