// The gaps between panels, by which they are made larger and smaller.
#pragma once

#include <array>

#include "ui/shell/layout.hpp"
#include "ui/shell/shell_ui.hpp"

namespace beamfork {

/// Their windows, in the order in which the keyboard comes to them (Ctrl+F6).
inline constexpr std::array splitter_names{"splitter/column", "splitter/findings",
                                           "splitter/strip",  "splitter/train",
                                           "splitter/budget", "splitter/light"};

void draw_splitters(const ShellUi& ui, const Layout& layout);

}  // namespace beamfork
