// The whole train straightened, to scale: the light of both eyes, every opening and all glass.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

struct UnfoldedPathState;

void draw_unfolded_path_panel(const Ui& ui, UnfoldedPathState& state);

}  // namespace beamfork
