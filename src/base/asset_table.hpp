// The table of embedded assets as the build generates it (src/embedded_assets.cmake).
// Use base/assets.hpp instead: it looks names up.
#pragma once

#include <span>
#include <string_view>

namespace beamfork {

struct EmbeddedAsset {
    std::string_view name;
    const std::string_view* bytes;  // defined in a generated source of its own
};

std::span<const EmbeddedAsset> embedded_assets();

}  // namespace beamfork
