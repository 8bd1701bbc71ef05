// Which part lies under the cursor.
#pragma once

#include <optional>

#include "scene/picture/camera.hpp"
#include "scene/picture/frame.hpp"
#include "scene/picture/view_options.hpp"

namespace beamfork {

/// The part (Mesh::part) of the first triangle the half line meets; empty over the ground. Metal that the
/// shells' view takes away is looked through, and glass counts as a body.
std::optional<int> part_at(const Frame& frame, const ViewRay& ray, const ViewOptions& options = {});

}  // namespace beamfork
