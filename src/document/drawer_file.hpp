// A drawer as TOML text (*.drawer.toml), and back. Its parts are written as a setup's are, with what a drawer knows of
// them besides. Keys are explained in src/document/README.md.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "document/drawer.hpp"
#include "document/setup_file.hpp"

namespace beamfork {

/// The newest version of the format that this program reads, and the one it writes.
constexpr int drawer_version = 1;
/// Larger drawers are refused: a club's has some hundred.
constexpr std::size_t most_drawer_parts = 5000;

struct ReadDrawer {
    Drawer drawer;
    std::vector<Notice> notices;  ///< in the order of their lines
};

/// `file_name` is for the error alone. Fields that are left out take their kind's values.
Result<ReadDrawer> read_drawer(std::string_view text, const std::string& file_name);

/// All fields in the order of their kind; reads back to the same drawer.
std::string write_drawer(const Drawer& drawer);

Result<ReadDrawer> load_drawer(const std::filesystem::path& path);

/// Whole or not at all: on an error the old file is as it was (document/atomic_file.hpp).
Result<void> save_drawer(const std::filesystem::path& path, const Drawer& drawer);

}  // namespace beamfork
