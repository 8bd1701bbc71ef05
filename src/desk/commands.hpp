// What can be asked of the open setups besides edits: undo, open, save, close. Plain values, carried out by the row of
// setups between two frames.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <variant>

#include "train/setup.hpp"

namespace beamfork {

struct Undo {};
struct Redo {};
/// To the document behind the first `position` changes.
struct GoToStep {
    std::size_t position = 0;
};
// What is opened stands beside what is open, unless that is a demo or a new setup that nobody has touched.
struct NewSetup {};
/// A copy that is not saved yet stands beside the setup.
struct DuplicateSetup {};
/// A setup that was made elsewhere, not saved yet.
struct StartSetup {
    Setup setup;
};
/// Another of the open setups comes into the window.
struct ShowSetup {
    std::uint64_t number = 0;
};
/// Its unsaved work has been asked about. When it was the last, the window begins anew.
struct CloseSetup {
    std::uint64_t number = 0;
};
struct OpenDemo {
    std::string asset;
};
struct OpenFile {
    std::filesystem::path path;
};
/// The user has agreed to overwrite what is there.
struct SaveFile {
    std::filesystem::path path;
};
struct Quit {};

/// Unsaved work has been asked about before CloseSetup and Quit are requested.
using Command = std::variant<Undo,
                             Redo,
                             GoToStep,
                             NewSetup,
                             DuplicateSetup,
                             StartSetup,
                             ShowSetup,
                             CloseSetup,
                             OpenDemo,
                             OpenFile,
                             SaveFile,
                             Quit>;

/// Whether another document comes into the window.
bool changes_document(const Command& command);

}  // namespace beamfork
