// Text for a page of fixed width: what `check` prints. Widths are in letters, not bytes: names are UTF-8.
#pragma once

#include <string>

namespace beamfork {

/// Letters in a line: the terminal's, else those of a page of text.
std::size_t page_width();

/// Breaks at blanks so that no line is longer than the page; `head` begins the first line and is as wide as
/// `indent`, by which later lines are indented. Ends in a line break.
std::string wrapped(const std::string& head, const std::string& text, std::size_t indent = 9);

/// Up to the first full stop that a blank follows, or a semicolon, without either.
std::string first_sentence(const std::string& text);

/// With blanks to that width, behind or before the text; a longer text ends in "…".
std::string in_column(const std::string& text, std::size_t width, bool at_right = false);

}  // namespace beamfork
