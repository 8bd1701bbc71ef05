// Small signs drawn with lines, so that they are crisp at every scale and need no picture files.
#pragma once

#include "scene/kit/finding_sign.hpp"

#include <imgui.h>

namespace beamfork {

enum class Icon {
    undo,
    redo,
    up,
    down,
    add,
    remove,
    duplicate,
    reset,
    fold,
    unfold,
    close,
    caution,
    more,
    widen,
    narrow,
    book
};

/// Fills a square of side `size` round `centre`.
void draw_icon(ImDrawList& list, Icon icon, ImVec2 centre, float size, ImU32 ink);

/// The shape that stands before a finding.
void draw_sign(ImDrawList& list, FindingSign sign, ImVec2 centre, float size, ImU32 ink);

}  // namespace beamfork
