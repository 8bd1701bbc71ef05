// How strongly things of the picture stand out: parts may fade to a faint outline of glass, and what was traced may be
// held back until the room has answered. Plain values that can be blended in time.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "train/setup.hpp"

namespace beamfork {

struct Emphasis {
    std::vector<float> faded{};  ///< by part: 0 as ever .. 1 faint; parts beyond its end: as ever
    float results = 1;  ///< of light and of what is read off it (focus, losses): 0 hidden .. 1

    /// 0 as ever .. 1 faint; -1 and other parts that are not in the list do not fade.
    [[nodiscard]] float fade_of(int part) const {
        const auto at = static_cast<std::size_t>(part);
        return part >= 0 && at < faded.size() ? faded[at] : 0;
    }
    bool operator==(const Emphasis&) const = default;
};

/// All but what is lit fades (document/tour_lit.hpp).
Emphasis emphasis_on(std::span<const std::string> lit, const Setup& setup);

/// From `a` (t = 0) to `b` (t = 1).
Emphasis blend(const Emphasis& a, const Emphasis& b, float t);

}  // namespace beamfork
