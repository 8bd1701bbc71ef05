// Letters in UTF-8 text. A letter is a Unicode code point; a byte that belongs to none counts as a letter of its own,
// so that every text can be cut and counted.
#pragma once

#include <optional>
#include <string_view>

namespace beamfork {

/// Where the first byte stands that is not UTF-8 (The Unicode Standard, table 3-7); nothing when all of it is.
std::optional<std::size_t> first_not_utf8(std::string_view bytes);

std::size_t letter_count(std::string_view text);

/// The letter at the front; empty when the text is.
std::string_view first_letter(std::string_view text);

/// The code point of a letter; U+FFFD for a byte that belongs to none.
char32_t code_point_of(std::string_view letter);

/// As many whole letters from the front as there are, `count` at most.
std::string_view first_letters(std::string_view text, std::size_t count);

/// As many whole letters from the front as need no more than so many bytes.
std::string_view letters_within(std::string_view text, std::size_t bytes);

std::string_view without_last_letter(std::string_view text);

}  // namespace beamfork
