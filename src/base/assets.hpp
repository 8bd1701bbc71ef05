// The files the program carries within itself: catalogues, demo setups, schemas, shaders and the typeface.
// Names are paths below the top of the source tree ("assets/demos/short_of_focus.train.toml",
// "shaders/beam.vert"); the typeface is "fonts/regular.otf" and "fonts/bold.otf".
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace beamfork {

/// The bytes of the named file, or nothing when no such file was embedded. The view stays valid as long as
/// the program runs; there is no zero byte behind it.
std::optional<std::string_view> asset(std::string_view name);

/// The names that begin with `folder` ("assets/demos/"; all of them when it is empty), sorted.
std::vector<std::string_view> asset_names(std::string_view folder = {});

}  // namespace beamfork
