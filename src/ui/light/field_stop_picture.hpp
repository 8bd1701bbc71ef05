// The light on one field stop as a small round picture.
#pragma once

#include "scene/kit/colours.hpp"
#include "study/light/clipping.hpp"

#include <imgui.h>

namespace beamfork {

/// As seen against the light: the field stop's +x at the right, +y up. Full light is near-white with the arm's
/// colour on the rim.
void draw_field_stop(
    ImDrawList& list, const EyeClipping& clipping, ImVec2 centre, float radius, ColourRole rim);

}  // namespace beamfork
