// The window: opens it on a setup and stays until it is closed.
#pragma once

#include <string>

#include "document/setup_file.hpp"

namespace beamfork {

struct WindowStart {
    ReadSetup opened;
    std::string file_path;  ///< where saving goes; empty for a demo
    bool is_empty =
        false;  ///< nothing was asked for: the files open last, else the start page over it
};

/// Error no_graphics when no window can be had.
Result<void> run_window(const WindowStart& start);

}  // namespace beamfork
