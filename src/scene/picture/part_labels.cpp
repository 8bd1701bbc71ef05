// Names by the parts, and the exit pupils with the names of the eyes that belong there.
#include <algorithm>

#include "parts/eyepiece_pair.hpp"
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture_input.hpp"

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

// On the axis in the middle of the part; the telescope's near its lens, where its tube is free, and the
// eyepiece's behind its field stop, where the focus has its own words.
Point name_place(const PlacedPart& placed, Role role) {
    const Point entry = placed.world_from_part.origin;
    const Point exit = placed.world_from_exit.origin;
    if (role == Role::telescope) return glm::mix(entry, exit, 0.25);
    if (role == Role::splitter) return entry;
    if (role == Role::eyepiece) return placed.world_from_exit.point_out({0, 0, 15});
    return (entry + exit) / 2.0;
}

// Where the eyepiece puts the exit pupil: its eye lens, and the eye relief behind it.
double eye_point_behind_stop(const EyepiecePair& eyepiece) {
    return eyepiece.field_stop_depth.value + std::max(18.0, eyepiece.focal_length.value) + 12
           + eyepiece.eye_relief.value;
}

}  // namespace

void add_part_labels(Frame& frame, const PictureInput& input) {
    const Train& train = input.train();
    for (const PlacedPart& placed : train.placed) {
        if (placed.eye == Eye::right) continue;
        const Part& part = input.setup.parts[placed.part];
        const Role role = role_of(part);
        frame.labels.push_back({glm::vec3(name_place(placed, role)), part.name, LabelRole::part,
                                static_cast<int>(placed.part), name_priority(role)});
    }
    const auto& eyepiece = part_as<EyepiecePair>(input.setup, train.choice.eyepiece);
    const double distance = eye_point_behind_stop(eyepiece);
    for (const Eye eye : both_eyes) {
        const Point at = train.path(eye).world_from_field_stop.point_out({0, 0, distance});
        const Pose pupil{train.path(eye).world_from_field_stop.axes, at};
        const Line rim{{}, {}, arm_role(eye), 1.5F, false, false};
        add_outline(frame.lines, circle(pupil, input.report.magnification.exit_pupil.value / 2, 24),
                    rim);
        frame.labels.push_back(
            {glm::vec3(at), fmt::format("{} eye", name_of(eye)), LabelRole::eye, -1, 5});
    }
}

}  // namespace beamfork
