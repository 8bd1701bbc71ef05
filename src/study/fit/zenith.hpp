// What must be free behind a telescope that points straight up: the train hangs below the focuser, and a fork, a
// tripod or a pier may be in its way.
#pragma once

#include <optional>

#include "train/train.hpp"

namespace beamfork {

/// Lengths from the focuser's rear end, where the racked-in drawtube ends, along the drawtube's axis.
struct ZenithRoom {
    Millimetres wanted;                ///< how far back the farthest point of the train reaches
    std::size_t part = 0;              ///< the part that has this point
    std::optional<Millimetres> there;  ///< how much the mount leaves, where that is stated
    bool is_sideways = false;  ///< the focuser stands out of the tube's side: room beside it
    bool is_straight = false;  ///< nothing turns the light: the observer's head is below it, too
    [[nodiscard]] bool hits() const { return there && wanted > *there; }
};

/// With the train as it is focused. The train has a focuser, as every train has.
ZenithRoom zenith_room(const Setup& setup, const Train& train);

}  // namespace beamfork
