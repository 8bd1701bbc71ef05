// What the window begins with when nothing was opened: demos with their pictures, the way to one's own setup, and
// the files opened lately. It lies over the first demo and is reached later by name.
#pragma once

#include "ui/files/files_ui.hpp"

namespace beamfork {

/// Opens it with the next frame.
void ask_for_start_page(const FilesUi& ui);
/// Draws the page while it is open.
void draw_start_page(const FilesUi& ui);

}  // namespace beamfork
