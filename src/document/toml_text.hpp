// Values and keys as TOML text.
#pragma once

#include <string>
#include <string_view>

namespace beamfork {

/// In quotes on one line, everything escaped that must be.
std::string toml_string(std::string_view text);

/// In triple quotes over several lines.
std::string toml_lines(std::string_view text);

/// Either, as the text has lines or not.
std::string toml_words(std::string_view text);

/// Bare where TOML allows it, else in quotes.
std::string toml_key(std::string_view key);

}  // namespace beamfork
