// How the window was left: kept in a small JSON file in the user's configuration folder. A missing or
// broken file is no trouble; the window then opens as new.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "ui/interface.hpp"

namespace beamfork {

struct StoredSession {
    Session session;
    std::vector<std::string> recent_files;
    std::vector<std::string> open_files;  ///< absolute paths, in the order of their row
    std::string shown_file;               ///< one of them, or empty
};

/// $XDG_CONFIG_HOME/beamfork/session.json, else ~/.config/beamfork/session.json; empty without a home.
std::filesystem::path session_path();

StoredSession load_session(const std::filesystem::path& path);
/// What such a file's text says.
StoredSession read_session(const std::string& text);
Result<void> store_session(const std::filesystem::path& path, const StoredSession& stored);

}  // namespace beamfork
