// The picture: turning it, coming nearer, choosing parts in it, and the words that float over it.
#pragma once

#include <span>

#include "ui/kit/area.hpp"
#include "ui/shell/ui.hpp"

namespace beamfork {

/// Drag turns; right, middle or Shift drag shifts; the wheel comes nearer to what is under the pointer; a click
/// selects a part, a double click frames it.
void draw_viewport(const Ui& ui, const Area& area);

/// Moves smoothly from where the camera is.
void move_camera(const Ui& ui, const Camera& to);
void show_view(const Ui& ui, StandardView view);
/// The selected part, or all of the train.
void frame_selection(const Ui& ui);

/// Names by their parts, clear of the knobs (viewport_words.cpp).
void draw_viewport_words(const Ui& ui, const Area& area, std::span<const Knob> knobs);
/// The names of a frame in its part of the picture, none of them picked (viewport_words.cpp).
void draw_names(const Ui& ui, const Area& area, const Frame& frame);
/// Pixels at the foot of the picture where its controls stand.
float foot_height();
/// Standard views and how tubes are drawn, at the foot of the picture (view_bar.cpp). Returns where it ends, pixels.
float draw_view_bar(const Ui& ui, const Area& area);
/// In its list of what else is drawn: paint, motion and pulling apart (light_choices.cpp).
void draw_light_choices(const Ui& ui);
/// The scale bar in the corner right of `free_from`, pixels; left out where there is no room (viewport_words.cpp).
void draw_scale(const Ui& ui, const Area& area, float free_from);

}  // namespace beamfork
