// The names that float over the picture, on any draw list: in the window and in pictures without one.
#pragma once

#include <optional>

#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/frame.hpp"
#include "scene/picture/light_cover.hpp"
#include "scene/picture/view_options.hpp"

#include <imgui.h>

namespace beamfork {

/// What is seen and from where; which part is under the pointer, which one is selected.
struct LabelLook {
    const Frame& frame;
    const Camera& camera;
    const ViewOptions& options;
    int hot_part = -1;
    std::optional<std::size_t> selected_part;
    float foot_px = 0;  ///< of the picture, where controls stand: no name goes there
    const LightCover* cover = nullptr;  ///< null: of the frame alone
    Emphasis emphasis{};                ///< names of what has faded, or is held back, go
};

/// `origin` is the picture's upper left corner on the list, `viewport` its size. Draws nothing when labels
/// are switched off.
void draw_labels(ImDrawList& list, ImVec2 origin, Viewport viewport, const LabelLook& look);

}  // namespace beamfork
