// The bar at the top: the setup and its file, undo, who looks through what at what, text size.
#pragma once

#include "ui/shell/layout.hpp"
#include "ui/shell/ui.hpp"

namespace beamfork {

void draw_top_bar(const Ui& ui, const Area& area);

/// The eyepiece pair, observer and target in use (choosers.cpp); as wide as asked.
void draw_choosers(const Ui& ui, float width);
float choosers_width(float room);

}  // namespace beamfork
