// Power, field and exit pupil that follow from the train.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_magnification_panel(const Ui& ui);

}  // namespace beamfork
