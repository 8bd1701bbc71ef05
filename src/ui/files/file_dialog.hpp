// Choosing a file to open or to save into: folders, setups, a path to type, and a question before a file is
// overwritten. Our own, so that it looks and behaves the same on every machine.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace beamfork {

struct Ui;

enum class FilePurpose { open, save };

struct FolderEntry {
    std::string name;
    bool is_folder = false;
};

struct FileDialog {
    FilePurpose purpose = FilePurpose::open;
    std::filesystem::path folder;
    std::string folder_text;  ///< as typed, until Enter
    std::string name;
    bool all_files = false;  ///< else setups only
    std::vector<FolderEntry> entries;
    std::string error;
    bool asks_to_overwrite = false;
    bool opened = false;  ///< the popup is up
};

/// Folders first, then files, each by name; hidden ones are left out. An unreadable folder gives an error.
void enter_folder(FileDialog& dialog, const std::filesystem::path& folder);

/// A setup's file name, with the ending that is missing: "evening" -> "evening.train.toml".
std::string with_setup_ending(const std::string& name);

void start_file_dialog(const Ui& ui, FilePurpose purpose);
/// Draws the dialog while there is one.
void draw_file_dialog(const Ui& ui);

}  // namespace beamfork
