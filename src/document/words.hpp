// Names and texts that the user types: what they may hold, and how a name is kept unlike its neighbours'.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "train/setup.hpp"

namespace beamfork {

/// The key of an entry that says how well its values are known, and what stands before the foreign keys of that
/// table among Part::unrecognised.
inline constexpr std::string_view tolerances_key = "plus_minus";
inline constexpr std::string_view tolerance_prefix = "plus_minus.";

/// The first line (from 1) that is not text: a zero byte or bytes that are not UTF-8.
std::optional<int> line_that_is_not_text(std::string_view bytes);

/// What is wrong with the name of a part: it must be one line of 1 to 100 bytes of text.
std::optional<std::string> name_objection(std::string_view name);

/// What is wrong with a setup's title (one line, may be empty) or story (up to 20 000 bytes in lines).
std::optional<std::string> title_objection(std::string_view title);
std::optional<std::string> story_objection(std::string_view story);

/// Whether a part of that role, other than the one at index `except`, has that name.
bool name_is_taken(const Setup& setup,
                   Role role,
                   std::string_view name,
                   std::optional<std::size_t> except = std::nullopt);

/// The name itself, or with the first free number behind it: "Spacer 2".
std::string free_name(const Setup& setup, Role role, const std::string& wanted);

}  // namespace beamfork
