// How far the openings and lenses of each part stand clear of the glass, mirrors and lens cells of its
// neighbours: a nose or a barrel reaches into the part before it and may hit what is there.
#pragma once

#include <optional>
#include <vector>

#include "train/train.hpp"

namespace beamfork {

struct Clearance {
    std::size_t part = 0;   ///< the part that reaches
    std::string what;       ///< its opening or lens: "nose"
    std::size_t other = 0;  ///< the part it reaches towards
    std::string obstacle;   ///< what would be hit: "prism exit face"
    Millimetres room;       ///< left along the light; negative: it would have to go in that far
};

/// The tightest place of each part that has glass, a mirror or a lens cell of another part before it, in
/// the order of the light. A round end of radius r before a mirror tilted by t meets it r tan t earlier
/// than its axis does.
std::vector<Clearance> clearances(const EyePath& path);

/// Nobody stated where the glass stands that would be hit: it is derived, or where it usually is.
bool hangs_on_unstated(const Train& train, const Clearance& one);

/// The tightest of both eyes, or nothing when nothing reaches towards anything.
std::optional<Clearance> tightest(const Train& train);

}  // namespace beamfork
