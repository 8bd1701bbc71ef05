// The program behind main(): reads the command line, does what it asks, tells what went wrong on
// standard error, and returns the exit status.
#pragma once

namespace beamfork {

int run(int argc, const char* const* argv);

}  // namespace beamfork
