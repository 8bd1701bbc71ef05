// Nothing is thrown away unasked: commands that would drop unsaved work wait for an answer.
#pragma once

#include "ui/shell/ui.hpp"

namespace beamfork {

/// Requests the command, or asks first when unsaved work would be lost by it: closing a setup, quitting.
void ask_for_command(const Ui& ui, Command command);

/// Into the file it came from; asks for one when there is none.
void ask_to_save(const Ui& ui);
void ask_to_save_as(const Ui& ui);
void ask_to_open(const Ui& ui);

/// Save, discard or go back, for one setup after the other, each brought into the window; and goes on with what
/// waited once all are answered and saves have come true.
void draw_unsaved_guard(const Ui& ui);

}  // namespace beamfork
