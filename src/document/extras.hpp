// What a file says beside the values this program knows.
#pragma once

#include <map>
#include <string>

#include "parts/part.hpp"

namespace beamfork {

/// Foreign keys with their TOML text, and comments.
struct Extras {
    std::map<std::string, std::string> unrecognised{};
    Remarks remarks{};
    bool operator==(const Extras&) const = default;
};

}  // namespace beamfork
