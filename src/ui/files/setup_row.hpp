// The row of setups that are open at once, under the top bar; none is drawn for one setup alone.
#pragma once

#include "ui/kit/area.hpp"
#include "ui/shell/ui.hpp"

namespace beamfork {

/// 0 while one setup alone is open.
float setup_row_height(const Ui& ui);
void draw_setup_row(const Ui& ui, const Area& area);

/// Brings the next setup of the row into the window (+1), or the one before (-1); round at the ends.
void go_to_setup(const Ui& ui, int step);
/// Closes the setup that is shown, after a question when work is unsaved.
void ask_to_close_setup(const Ui& ui);

}  // namespace beamfork
