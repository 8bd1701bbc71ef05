// Lines of plain text for the terminal: folded at blanks, padded to columns.
#pragma once

#include <string>

namespace beamfork {

/// `head` and then `text`, broken at blanks so that no line is wider than 96 letters; lines after the first
/// begin with `indent` blanks, and the first is taken to be filled up to there. Ends in a line break.
std::string wrapped(const std::string& head, const std::string& text, std::size_t indent = 9);

/// The text and blanks up to `width` letters (not bytes); at least one blank.
std::string padded(const std::string& text, std::size_t width);

}  // namespace beamfork
