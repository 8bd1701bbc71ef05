// What would bring the setup to focus, best first.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_ways_to_focus_panel(const Ui& ui);

}  // namespace beamfork
