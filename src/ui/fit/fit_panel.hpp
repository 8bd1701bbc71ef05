// Whether eyes, eyepieces and nose have room, and whether every joint can be joined.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_fit_panel(const Ui& ui);

}  // namespace beamfork
