// What is told about the light while it is painted, moves, or is gone because the parts are pulled apart: a small key in
// the picture's upper left corner, on any draw list.
#pragma once

#include <optional>

#include "scene/picture/camera.hpp"
#include "scene/picture/frame.hpp"
#include "scene/picture/light_cover.hpp"
#include "scene/picture/view_options.hpp"

#include <imgui.h>

namespace beamfork {

/// What is seen and from where.
struct LightKeyLook {
    const Frame& frame;
    const Camera& camera;
    const ViewOptions& options;
};

/// `origin` is the picture's upper left corner on the list, `viewport` its size. Returns the room it took, pixels of
/// the picture; nothing while there is nothing to tell.
std::optional<PixelBox>
draw_light_key(ImDrawList& list, ImVec2 origin, Viewport viewport, const LightKeyLook& look);

}  // namespace beamfork
