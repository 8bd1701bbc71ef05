// A rectangle of the window, in pixels from its upper left corner.
#pragma once

#include <imgui.h>

namespace beamfork {

struct Area {
    float left = 0;
    float top = 0;
    float width = 0;
    float height = 0;
    [[nodiscard]] float right() const { return left + width; }
    [[nodiscard]] float bottom() const { return top + height; }
    [[nodiscard]] ImVec2 corner() const { return {left, top}; }
    [[nodiscard]] ImVec2 size() const { return {width, height}; }
};

}  // namespace beamfork
