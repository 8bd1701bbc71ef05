// Every eyepiece pair with every observer and every target: where the drawtube must stand.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

/// `is_wide`: the panel has the whole width of the strip.
void draw_reach_table_panel(const Ui& ui, bool is_wide);

}  // namespace beamfork
