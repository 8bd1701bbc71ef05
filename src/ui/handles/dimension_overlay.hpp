// The dimensions of the selected part, drawn over the picture.
#pragma once

#include <span>

#include "scene/handles/dimension_layout.hpp"

#include <imgui.h>

namespace beamfork {

/// `origin` is the picture's upper left corner on the list.
void draw_dimensions(ImDrawList& list,
                     ImVec2 origin,
                     std::span<const Dimension> dimensions,
                     std::span<const PlacedDimension> placed,
                     bool on_light_ground);

/// A number's size as it is drawn.
glm::vec2 measure_number(const std::string& text);

}  // namespace beamfork
