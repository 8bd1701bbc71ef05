// The Moon as each eye sees it, in a corner of a talk's picture.
#pragma once

#include "ui/kit/area.hpp"

#include <imgui.h>

namespace beamfork {

/// `texture` is twice as wide as high, row 0 at the top: the left eye's picture and the right one's. `foot`: pixels of the
/// picture's lower edge that are others'.
void draw_talk_sight(ImDrawList& list, const Area& picture, float foot, ImTextureID texture);

}  // namespace beamfork
