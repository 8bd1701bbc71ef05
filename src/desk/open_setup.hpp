// Finding a setup by what the user calls it: a file's path, or the name of a shipped demo.
#pragma once

#include <string>
#include <vector>

#include "document/setup_file.hpp"

namespace beamfork {

struct Demo {
    std::string name;   ///< "1-short-of-focus"
    std::string asset;  ///< "assets/demos/1-short-of-focus.train.toml"
    std::string title;
    std::string story;
};

/// The shipped demos in the order of their names; read once.
const std::vector<Demo>& demos();

/// True when `name` is a setup's own file, which saving may overwrite, rather than a demo or a printed sheet.
bool names_a_setup_file(const std::string& name);

/// A file of that name (a setup, or a sheet with a setup in it), else a demo of that name or number; empty: the first demo.
/// Errors name the nearest demo.
Result<ReadSetup> open_named(const std::string& name);
Result<ReadSetup> open_demo(const std::string& asset_name);

}  // namespace beamfork
