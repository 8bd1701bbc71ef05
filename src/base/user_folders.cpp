#include "base/user_folders.hpp"

#include <cstdlib>

namespace beamfork {

namespace {

namespace fs = std::filesystem;

fs::path absolute_path_in(const char* variable) {
    const char* value = std::getenv(variable);
    const fs::path path = value != nullptr ? value : "";
    return path.is_absolute() ? path : fs::path();
}

fs::path folder_of_program(const char* variable, const char* below_home) {
    if (const fs::path named = absolute_path_in(variable); !named.empty())
        return named / "beamfork";
    const fs::path home = absolute_path_in("HOME");
    return home.empty() ? home : home / below_home / "beamfork";
}

}  // namespace

fs::path config_folder() { return folder_of_program("XDG_CONFIG_HOME", ".config"); }

fs::path state_folder() { return folder_of_program("XDG_STATE_HOME", ".local/state"); }

}  // namespace beamfork
