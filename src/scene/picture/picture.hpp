// The picture of a setup as plain data: bodies, light from the very rays that are traced, field stops with
// their computed light, the focus and its gap, names. Same input, same Frame; no GL and no clocks.
//
// Everything is in world mm (geometry/pose.hpp). Light is drawn at the primary wavelength.
#pragma once

#include "scene/picture/frame.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

/// How much is spent on a picture. The defaults suit a slider that moves; see `stage_effort`.
struct PictureEffort {
    /// Over the pupil, from the middle of the field; a rim of rays comes on top.
    int axis_rays = 64;
    int rim_rays = 24;
    int edge_points = 4;      ///< places on the edge of the field: 0, 2 (sideways) or 4
    int edge_rays = 16;       ///< from each of them
    int disc_pixels = 96;     ///< side of a field stop's image
    int round_segments = 64;  ///< corners of a circle
    bool operator==(const PictureEffort&) const = default;
};

/// For pictures that are looked at for long: README, stage, print.
constexpr PictureEffort stage_effort() { return {160, 40, 4, 32, 256, 128}; }

/// `report` must be of this setup. Nothing here depends on what the viewer has switched on
/// (scene/picture/view_options.hpp): that needs no new Frame. The revision is a fingerprint of the content: equal pictures, equal
/// revisions.
Frame build_frame(const Setup& setup, const Report& report, const PictureEffort& effort = {});

}  // namespace beamfork
