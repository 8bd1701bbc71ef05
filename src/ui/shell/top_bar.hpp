// The bar at the top: the setup and its file, undo, who looks through what at what, text size.
#pragma once

#include "ui/files/files_ui.hpp"
#include "ui/shell/layout.hpp"
#include "ui/shell/shell_ui.hpp"

namespace beamfork {

void draw_top_bar(const ShellUi& ui, const FilesUi& files, const Area& area);

/// The eyepiece pair, observer and target in use (choosers.cpp); as wide as asked.
void draw_choosers(const ShellUi& ui, float width);
float choosers_width(float room);

}  // namespace beamfork
