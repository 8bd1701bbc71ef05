// The picture: turning it, coming nearer, choosing parts in it, and the words that float over it.
#pragma once

#include <span>

#include "ui/kit/area.hpp"
#include "ui/picture/picture_ui.hpp"

namespace beamfork {

struct Frame;
struct HandleState;
struct HandleUi;
struct Knob;

/// Of the handles that lie on the picture.
HandleUi handle_ui(const PictureUi& ui, HandleState& handles);

/// Drag turns; right, middle or Shift drag shifts; the wheel comes nearer to what is under the pointer; a click
/// selects a part, a double click frames it.
void draw_viewport(const PictureUi& ui, HandleState& handles, const Area& area);

/// Moves smoothly from where the camera is.
void move_camera(const PictureUi& ui, const Camera& to);
void show_view(const PictureUi& ui, StandardView view);
/// The selected part, or all of the train.
void frame_selection(const PictureUi& ui);

/// Names by their parts, clear of the knobs (viewport_words.cpp).
void draw_viewport_words(const PictureUi& ui,
                         const HandleUi& handles,
                         const Area& area,
                         std::span<const Knob> knobs);
/// The names of a frame in its part of the picture, none of them picked (viewport_words.cpp).
void draw_names(const PictureUi& ui, const Area& area, const Frame& frame);
/// Pixels at the foot of the picture where its controls stand.
float foot_height();
/// Standard views and how tubes are drawn, at the foot of the picture (view_bar.cpp). Returns where it ends, pixels.
float draw_view_bar(const PictureUi& ui, const Area& area);
/// In its list of what else is drawn: paint, motion and pulling apart (light_choices.cpp).
void draw_light_choices(const PictureUi& ui);
/// The scale bar in the corner right of `free_from`, pixels; left out where there is no room (viewport_words.cpp).
void draw_scale(const PictureUi& ui, const Area& area, float free_from);

}  // namespace beamfork
