// “Describe my setup”: a few questions, each of which may stay unanswered, that end in a setup to work on.
#pragma once

#include "ui/files/files_ui.hpp"

namespace beamfork {

void start_describe_dialog(const FilesUi& ui);
/// Draws the dialog while there is one.
void draw_describe_dialog(const FilesUi& ui);

}  // namespace beamfork
