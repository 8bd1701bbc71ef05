// What one frame of the window asks of the open setup and of the row of setups.
#pragma once

#include <optional>
#include <vector>

#include "desk/commands.hpp"
#include "document/edit.hpp"

namespace beamfork {

/// A cure of the report's findings, by both indices.
struct CurePick {
    std::size_t finding = 0;
    std::size_t cure = 0;
    bool operator==(const CurePick&) const = default;
};

/// Carried out in this order: gesture_began, edits, gesture_ended, commands.
struct DeskRequests {
    bool gesture_began = false;  ///< a slider is pressed: what follows is one undo step ...
    bool gesture_ended = false;  ///< ... until here
    std::vector<Edit> edits;
    std::vector<Command> commands;
    std::optional<CurePick> preview;  ///< under the pointer: shown as a ghost in the picture
};

}  // namespace beamfork
