// Numbers to words and back, and the nearest known name to a mistyped one.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace beamfork {

/// Fixed decimals with a true minus sign left out of "-0.0"; "n/a" for a number that is not finite.
std::string format_number(double value, int decimals);

/// The shortest text that reads back to the same double.
std::string format_exact(double value);

/// A signed number: "+12.0", "-3.5".
std::string format_signed(double value, int decimals);

/// The whole text as one finite number, or nothing. Blanks around it are allowed.
std::optional<double> parse_number(std::string_view text);

/// The candidate with the smallest edit distance to `name`, or nothing when none is at all alike
/// (more than half of the letters would have to change).
std::optional<std::string> nearest_name(std::string_view name,
                                        std::span<const std::string> candidates);

/// Number of single-letter insertions, removals and replacements between two words
/// (V. I. Levenshtein, Soviet Physics Doklady 10, 707-710, 1966).
std::size_t edit_distance(std::string_view a, std::string_view b);

}  // namespace beamfork
