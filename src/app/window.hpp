// The window: opens it on a setup and stays until it is closed.
#pragma once

#include <string>

#include "document/setup_file.hpp"

namespace beamfork {

/// `file_path` is where saving goes; empty for a demo. Error no_graphics when no window can be had.
Result<void> run_window(const ReadSetup& opened, const std::string& file_path);

}  // namespace beamfork
