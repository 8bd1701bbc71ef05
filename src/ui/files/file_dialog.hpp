// Choosing a file to open or to save into: folders, setups, a path to type, and a question before a file is
// overwritten. Our own, so that it looks and behaves the same on every machine.
#pragma once

#include <filesystem>
#include <string>

#include "ui/files/files_ui.hpp"

namespace beamfork {

/// Folders first, then files, each by name; hidden ones are left out. An unreadable folder gives an error.
void enter_folder(FileDialog& dialog, const std::filesystem::path& folder);

/// A setup's file name, with the ending that is missing: "evening" -> "evening.train.toml".
std::string with_setup_ending(const std::string& name);

void start_file_dialog(const FilesUi& ui, FilePurpose purpose);
/// Draws the dialog while there is one.
void draw_file_dialog(const FilesUi& ui);

}  // namespace beamfork
