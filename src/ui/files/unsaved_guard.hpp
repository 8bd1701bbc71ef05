// Nothing is thrown away unasked: commands that would drop unsaved work wait for an answer.
#pragma once

#include "ui/files/files_ui.hpp"

namespace beamfork {

/// Requests the command, or asks first when unsaved work would be lost by it: closing a setup, quitting.
void ask_for_command(const FilesUi& ui, Command command);

/// Into the file it came from; asks for one when there is none.
void ask_to_save(const FilesUi& ui);
void ask_to_save_as(const FilesUi& ui);
void ask_to_open(const FilesUi& ui);

/// Save, discard or go back, for one setup after the other, each brought into the window; and goes on with what
/// waited once all are answered and saves have come true.
void draw_unsaved_guard(const FilesUi& ui);

}  // namespace beamfork
