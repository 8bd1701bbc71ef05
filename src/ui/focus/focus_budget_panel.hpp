// The light path that the telescope offers, what each part takes of it, and what is left for focusing.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

void draw_focus_budget_panel(const Ui& ui);

}  // namespace beamfork
