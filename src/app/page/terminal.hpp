// The terminal that standard output goes to.
#pragma once

#include <cstddef>
#include <optional>

namespace beamfork {

/// In letters; nothing when standard output is no terminal, or one that does not say.
std::optional<std::size_t> terminal_width();

}  // namespace beamfork
