// Which combinations of eyepiece pair, observer and target are studied: all of them, or as many as take no longer than a
// few seconds.
#pragma once

#include <string>
#include <vector>

#include "train/setup.hpp"

namespace beamfork {

inline constexpr std::size_t most_combinations = 200;

struct Combinations {
    std::vector<Choice>
        studied;  ///< eyepieces outermost, then observers, then targets; never empty
    std::vector<std::size_t>
        left_out;  ///< parts of which none is studied, by index; empty: all are
};

/// Every part with every other. Of more than `most_combinations` the last of the longest list are left out, one by one,
/// though never one that is chosen. The setup must have one of each.
Combinations combinations(const Setup& setup, const Choice& chosen);

/// "More than 200 combinations are not studied: left out are “Guest 7” and “Guest 8”."; empty when nothing is left out.
std::string left_out_sentence(const Setup& setup, const std::vector<std::size_t>& left_out);

}  // namespace beamfork
