// Names by the parts.
#include <algorithm>
#include <cmath>

#include "scene/picture/picture_input.hpp"
#include "trace/forked_ray.hpp"

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
}

}  // namespace beamfork
