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

/// As printed: every hyphen that begins a number (at the front, behind a blank or an opening bracket) is a true minus
/// sign. "from -1.4 mm" → "from −1.4 mm".
std::string typeset(std::string_view words);

/// The whole text as one finite number, or nothing. Blanks around it are allowed.
std::optional<double> parse_number(std::string_view text);

/// Letters of ASCII alone; others stay.
std::string lower_case(std::string_view text);

/// The candidate with the smallest edit distance to `name`, or nothing when none is at all alike
/// (more than half of the letters would have to change).
std::optional<std::string> nearest_name(std::string_view name,
                                        std::span<const std::string> candidates);

/// "; did you mean 'title'?": to stand behind a sentence about the unknown word; empty when no known name is at all
/// alike.
std::string did_you_mean(std::string_view word,
                         std::span<const std::string> known,
                         std::string_view open_quote = "'",
                         std::string_view close_quote = "'");

/// Number of single-letter insertions, removals and replacements between two words
/// (V. I. Levenshtein, Soviet Physics Doklady 10, 707-710, 1966).
std::size_t edit_distance(std::string_view a, std::string_view b);

}  // namespace beamfork
