#include "study/fit/zenith.hpp"

#include <algorithm>
#include <cmath>

#include "parts/balance.hpp"
#include "parts/body_reach.hpp"

namespace beamfork {

ZenithRoom zenith_room(const Setup& setup, const Train& train) {
    const std::size_t focuser = parts_with_role(setup, Role::focuser).front();
    const auto placed = std::find_if(train.placed.begin(), train.placed.end(),
                                     [&](const PlacedPart& one) { return one.part == focuser; });
    BEAMFORK_EXPECTS(placed != train.placed.end());
    const Pose& rear_end = placed->world_from_part;
    const Direction back = rear_end.z();
    const double start = glm::dot(rear_end.origin, back);

    ZenithRoom room;
    room.part = focuser;
    for (const PlacedPart& one : train.placed) {
        if (role_of(setup.parts[one.part]) < Role::focuser) continue;
        for (const Body& body : one.bodies) {
            const Pose world_from_body = one.world_from_part * body.part_from_body;
            const Millimetres reach{reach_of(body.shape, world_from_body, back) - start};
            if (reach <= room.wanted) continue;
            room.wanted = reach;
            room.part = one.part;
        }
    }
    const double slope = std::abs(back.z);
    room.is_sideways = slope < 0.5;
    const Direction to_eye = train.path(Eye::left).world_from_field_stop.z();
    room.is_straight = glm::dot(to_eye, back) > 0.9;
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    const auto balance = balance_of(setup.parts[telescope].body);
    if (balance) room.there = balance->free_behind;
    return room;
}

}  // namespace beamfork
