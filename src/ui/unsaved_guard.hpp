// Nothing is thrown away unasked: commands that would drop unsaved work wait for an answer.
#pragma once

#include "ui/ui.hpp"

namespace beamfork {

/// Requests the command, or asks first when unsaved work would be lost by it.
void ask_for_command(const Ui& ui, Command command);

/// Whether another document takes the place of this one.
bool replaces_document(const Command& command);

/// Into the file it came from; asks for one when there is none.
void ask_to_save(const Ui& ui);
void ask_to_save_as(const Ui& ui);
void ask_to_open(const Ui& ui);

/// Save, discard or go back; and goes on with what waited once the save has come true.
void draw_unsaved_guard(const Ui& ui);

}  // namespace beamfork
