// The row of all changes since the setup was opened, to go to any of them.
#pragma once

#include "ui/shell/shell_ui.hpp"

namespace beamfork {

/// Its button, and below it the list while it is open: the oldest at the top, the present one marked, what could
/// be redone dim below it.
void draw_step_list(const ShellUi& ui);

}  // namespace beamfork
