// How a knob of the picture looks: a pill with two arrows on a stalk, and its hint.
#pragma once

#include "ui/handles/handle_overlay.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

struct KnobLook {
    bool is_hot = false;
    bool is_held = false;
    bool is_at_low = false;
    bool is_at_high = false;
};

/// A pill along the line with an arrow at either end; at a stop, a bar stands where the arrow was.
void paint_knob(ImDrawList& list, ImVec2 middle, glm::vec2 along, const KnobLook& look);
/// From the body's outline to the knob.
void paint_stalk(ImDrawList& list, const Area& area, const HandleView& view);
/// Where the hint goes, in pixels of the picture.
PixelBox hint_room(const Ui& ui, const Area& area, const Knob& knob, bool held);
/// What the knob does, or while it is held what it has done, in one line beside it.
void paint_hint(const Ui& ui, const Area& area, const Knob& knob, bool held);

}  // namespace beamfork
