// The row of setups that are open at once, under the top bar; none is drawn for one setup alone.
#pragma once

#include "ui/files/files_ui.hpp"
#include "ui/kit/area.hpp"

namespace beamfork {

/// 0 while one setup alone is open.
float setup_row_height(const FilesUi& ui);
void draw_setup_row(const FilesUi& ui, const Area& area);

/// Brings the next setup of the row into the window (+1), or the one before (-1); round at the ends.
void go_to_setup(const FilesUi& ui, int step);
/// Closes the setup that is shown, after a question when work is unsaved.
void ask_to_close_setup(const FilesUi& ui);

}  // namespace beamfork
