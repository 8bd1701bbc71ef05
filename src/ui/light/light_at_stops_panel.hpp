// How much of the telescope's light arrives over each field, and what stops the rest.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_light_at_stops_panel(const Ui& ui);

}  // namespace beamfork
