// The light on one field stop as a small round picture.
#pragma once

#include "parts/eye.hpp"
#include "scene/kit/colours.hpp"

#include <imgui.h>

namespace beamfork {

struct Report;

/// As seen against the light: the field stop's +x at the right, +y up. Full light is near-white with the arm's
/// colour on the rim.
void draw_field_stop(
    ImDrawList& list, const Report& report, Eye eye, ImVec2 centre, float radius, ColourRole rim);

}  // namespace beamfork
