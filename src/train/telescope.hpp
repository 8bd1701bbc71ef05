// What every study asks of the telescope, whichever kind it is.
#pragma once

#include <optional>

#include "base/units.hpp"
#include "train/setup.hpp"

namespace beamfork {

/// Of the telescope alone. Only a telescope that focuses by its primary changes focal length with focus.
struct TelescopeFacts {
    Millimetres aperture{0};
    Millimetres focal_length{0};  ///< at this focus, for the sky
    /// Image height over the tangent of the field angle for this target: longer than `focal_length` when it is near.
    Millimetres working_focal_length{0};
    Millimetres back_focus{0};   ///< image behind the drawtube's rear face, racked fully in
    Millimetres obstruction{0};  ///< diameter of what stands in the middle of the light; 0: nothing
    double vane_share = 0;       ///< of the aperture's area, in the shadow of what carries it
};

/// True of a telescope that focuses by moving its main mirror.
bool telescope_focuses_by_primary(const Setup& setup);

/// At the focus its datasheet gives, for the sky; or with the primary of a moving-mirror telescope moved by
/// `primary` towards the sky (others take no notice), and for a target `distance` away from the rim of the
/// objective: from the front lens, or from the rim of the main mirror. Field angles are seen from there, too. The setup must have a telescope (order_fault tells).
TelescopeFacts telescope_of(const Setup& setup,
                            Millimetres primary = Millimetres{0},
                            std::optional<Millimetres> distance = std::nullopt);

}  // namespace beamfork
