// The words of the trade that stand on screen, each explained in a sentence or two.
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace beamfork {

struct Term {
    std::string_view word;     ///< "back focus"; small letters unless it is a name
    std::string_view also;     ///< other names and labels that it explains, ", " between them
    std::string_view unit;     ///< in which it is told: "mm"; empty: it is no quantity
    std::string_view meaning;  ///< whole sentences
};

/// In the order of the alphabet.
std::span<const Term> glossary();

/// Those that fit a few typed letters, by their names first and then by what is said of them; nothing typed: all.
std::vector<const Term*> matching_terms(std::string_view typed);

/// The term that a label on screen speaks of: the longest that stands in it as whole words ("Stated light path":
/// light path). Null: none.
const Term* term_in(std::string_view label);

}  // namespace beamfork
