// Any TOML value as one line of text, for keeping what the program does not understand.
#pragma once

#include <optional>
#include <string>

#include <toml++/toml.h>

namespace beamfork {

/// Nothing when it is nested more than 32 deep, which no reader could be asked to take back.
std::optional<std::string> toml_text(const toml::node& node);

}  // namespace beamfork
