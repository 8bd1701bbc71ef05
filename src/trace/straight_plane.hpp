// A surface as a plane of the straightened path: where it stands there, and its edge in the form that is tested quickest.
#pragma once

#include "trace/straight_path.hpp"

namespace beamfork {

/// A surface's frame in the straightened path; left-handed after an odd number of mirrors.
struct StraightFrame {
    glm::dmat3 axes{1.0};
    Point origin{0.0};
};
StraightFrame frame_of(const Isometry& straight_from_world, const Pose& pose);

/// `index` into EyePath::surfaces, in front of which the medium has the index n.
StraightPlane
plane_of(const PlacedSurface& surface, const StraightFrame& frame, std::size_t index, double n);

}  // namespace beamfork
