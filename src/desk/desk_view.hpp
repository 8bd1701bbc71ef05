// What is true of the open setups beside their documents: files, what can be undone, the last message.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "document/setup_file.hpp"

namespace beamfork {

/// What the program has to say of the last thing it was asked to do.
struct Message {
    std::string text;  ///< empty: nothing
    bool is_error = false;
};

/// One of the setups that are open at once.
struct OpenSetupEntry {
    std::uint64_t number = 0;  ///< names it in commands
    std::string title;
    std::string file;  ///< empty: never saved
    bool modified = false;
};

/// Of the setup that is shown, and of all that are open.
struct DeskView {
    std::string file_path;  ///< empty: never saved
    bool modified = false;
    bool can_undo = false;
    bool can_redo = false;
    std::string undo_label;
    std::string redo_label;
    std::vector<std::string> steps;         ///< all changes in order ...
    std::size_t step_position = 0;          ///< ... of which so many are in the document
    std::vector<OpenSetupEntry> setups;     ///< all that are open, in the order of their row ...
    std::uint64_t shown_setup = 0;          ///< ... and the number of the one that is shown
    std::vector<std::string> recent_files;  ///< newest first
    std::vector<Notice> notices;            ///< of the file that is open
    Message message;
};

}  // namespace beamfork
