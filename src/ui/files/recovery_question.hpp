// Asks at the start what is to become of work that a window left behind when it broke down.
#pragma once

#include "ui/files/files_ui.hpp"

namespace beamfork {

/// Restore, discard, or later: then it is offered again at the next start.
void draw_recovery_question(const FilesUi& ui);

}  // namespace beamfork
