// How one of the open setups is looked at: what of the window's arrangement goes with the setup.
#pragma once

#include <optional>

#include "scene/picture/camera.hpp"

namespace beamfork {

struct SetupPose {
    Camera camera;
    bool camera_is_set = false;  ///< false: the next frame shows the overview
    std::optional<std::size_t> selected_part;
};

}  // namespace beamfork
