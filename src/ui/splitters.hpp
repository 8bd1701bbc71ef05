// The gaps between panels, by which they are made larger and smaller.
#pragma once

#include "ui/layout.hpp"
#include "ui/ui.hpp"

namespace beamfork {

void draw_splitters(const Ui& ui, const Layout& layout);

}  // namespace beamfork
