// How sharp a star is after all that glass, for each eye.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_image_quality_panel(const Ui& ui);

}  // namespace beamfork
