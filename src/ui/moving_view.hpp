// What moves in the picture by itself: packets of light, and parts on their way apart and back.
#pragma once

#include "ui/ui.hpp"

namespace beamfork {

/// Once a frame, before anything is drawn. Asks for the next frame only while something moves.
void advance_moving_view(const Ui& ui);

/// Sends the parts apart, or back together when they are or go apart; the camera goes with them.
void pull_apart_or_back(const Ui& ui);

}  // namespace beamfork
