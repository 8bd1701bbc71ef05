// How far the two images stand apart, and whether eyes merge them.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_alignment_panel(const Ui& ui);

}  // namespace beamfork
