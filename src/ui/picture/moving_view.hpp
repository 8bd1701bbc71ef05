// What moves in the picture by itself: packets of light, and parts on their way apart and back.
#pragma once

#include "ui/picture/picture_ui.hpp"

namespace beamfork {

/// Once a frame, before anything is drawn. Asks for the next frame only while something moves.
void advance_moving_view(const PictureUi& ui);

/// Light moving or not, painted or not, parts apart or together, as `wanted` has it; parts go there gently.
void show_moving_view(const PictureUi& ui, const ViewOptions& wanted);

/// Lets light move, or be steady again; it does not stay held.
void move_light_or_not(const PictureUi& ui);

/// Sends the parts apart, or back together when they are or go apart; the camera goes with them.
void pull_apart_or_back(const PictureUi& ui);

}  // namespace beamfork
