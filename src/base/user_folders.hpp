// Where this user's own files of the program lie, as the XDG Base Directory Specification 0.8 has it.
#pragma once

#include <filesystem>

namespace beamfork {

/// How the window was left: $XDG_CONFIG_HOME/beamfork, else ~/.config/beamfork. Empty without a home. A variable that
/// is empty or holds no absolute path counts as not set, as the specification asks.
std::filesystem::path config_folder();

/// What outlives a run but is worth no backup: $XDG_STATE_HOME/beamfork, else ~/.local/state/beamfork.
std::filesystem::path state_folder();

}  // namespace beamfork
