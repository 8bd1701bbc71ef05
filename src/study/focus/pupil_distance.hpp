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
        observer;         ///< whose distance it is; nothing: an end of the head's range
    double distance = 0;  ///< that the head is set to, mm: as near as it comes
    double wider = 0;     ///< that less the present setting, mm
    double path = 0;      ///< light path that each arm gains, reduced mm
    double refocus =
        0;  ///< of the drawtube, mm, positive outward; of a moving mirror: back focus given up
    bool reaches = true;  ///< drawtube or main mirror can stand there
    double missing = 0;   ///< mm by which it cannot
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
    double present = 0;  ///< distance to which the head is set, mm
    /// Empty where the path does not depend on the distance.
    std::vector<DistanceChange> observers;  ///< the setup's others, whose distance differs
    std::vector<DistanceChange> ends;       ///< narrowest, widest
    double seat_travel = 0;
    [[nodiscard]] double
    whole_range() const;  ///< light path from the narrowest to the widest setting, mm
};

/// Prisms are taken as true to their place. Errors as build_train.
Result<DistanceCoupling> distance_coupling(const Setup& setup, const Choice& choice);

}  // namespace beamfork
