// Pieces of the unfolded path; see scene/unfolded_path/unfolded_path_rows.hpp.
#pragma once

#include "scene/unfolded_path/unfolded_path_rows.hpp"

namespace beamfork {

EyeTrack unfolded_track(const Setup& setup, const Report& report, Eye eye);

/// The lengths that can be moved, along the rows' stretches.
std::vector<Grip>
unfolded_grips(const Setup& setup, const Report& report, const UnfoldedPathRows& rows);

/// Where the drawtube's rear face stands on this eye's unfolded axis, whose field stop is at `stop`.
double rear_face_place(const EyePath& path, double stop);

}  // namespace beamfork
