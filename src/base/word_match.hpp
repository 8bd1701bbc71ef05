// How well a few typed letters fit a name, for lists that are searched while one types.
#pragma once

#include <optional>
#include <string_view>

namespace beamfork {

/// Every word of `typed` must be found in `name`, in any order, small and capital letters alike. From best to
/// worst a word is found as the begin of the name, as the begin of one of its words, as the begins of several
/// words that follow each other ("fole" in "Focal length"), and, from four letters on, as the begin of a word
/// with one letter wrong, missing or too many, or two that changed places. Smaller is better; nothing: it does not fit. Nothing typed fits everything alike.
std::optional<int> word_match(std::string_view typed, std::string_view name);

}  // namespace beamfork
