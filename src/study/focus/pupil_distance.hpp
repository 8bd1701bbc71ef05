// What setting the head to another pupil distance does to focus. A hinge leaves the light path alone; a sliding
// head's arms become longer as they are drawn apart, so that one observer after another must refocus. Found
// by laying out the head anew at other distances, whatever its mechanism.
#pragma once

#include <optional>
#include <vector>

#include "study/focus/focus_budget.hpp"

namespace beamfork {

/// From the present setting to another, with the present observer's eyes: their correction comes on top.
struct DistanceChange {
    std::optional<std::size_t>
        observer;          ///< whose distance it is; nothing: an end of the head's range
    Millimetres distance;  ///< that the head is set to: as near as it comes
    Millimetres wider;     ///< that less the present setting
    Millimetres path;      ///< light path that each arm gains, reduced
    Millimetres
        refocus;  ///< of the drawtube, positive outward; of a moving mirror: back focus given up
    bool reaches = true;  ///< drawtube or main mirror can stand there
    Millimetres missing;  ///< by which it cannot
    bool missing_is_inward = true;
    bool seats_suffice =
        false;  ///< both seats can take `path` instead, beside what the observer's eyes want
};

struct DistanceCoupling {
    double path_per_mm =
        0;  ///< light path that each arm gains for one mm of pupil distance; a hinge: 0
    double refocus_per_mm =
        0;  ///< as DistanceChange::refocus, for one mm of pupil distance: through a shifter
            ///< the drawtube moves by less than the path
    Millimetres present;  ///< distance to which the head is set
    /// Empty where the path does not depend on the distance.
    std::vector<DistanceChange> observers;  ///< the setup's others, whose distance differs
    std::vector<DistanceChange> ends;       ///< narrowest, widest
    Millimetres seat_travel;
    /// Light path from the narrowest to the widest setting.
    [[nodiscard]] Millimetres whole_range() const;
};

/// Prisms are taken as true to their place. Errors as build_train.
Result<DistanceCoupling> distance_coupling(const Setup& setup, const Choice& choice);

}  // namespace beamfork
