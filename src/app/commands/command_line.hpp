// The command line as a value. Nothing is done here. What each command takes stands in its own <topic>_command_line.
#pragma once

#include "app/commands/tasks.hpp"
#include "base/error.hpp"

namespace beamfork {

/// Errors are bad_input with one sentence and a hint at --help.
Result<Task> read_command_line(int argc, const char* const* argv);

}  // namespace beamfork
