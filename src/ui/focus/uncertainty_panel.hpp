// How sure focus is: its chance when every ± is considered, and what is worth measuring.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_uncertainty_panel(const Ui& ui);

}  // namespace beamfork
