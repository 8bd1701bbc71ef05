// Where many rays meet the two faces of a roof in either order. Rays that met the other face first are kept mirrored
// in it (bundle_kernel.hpp); here all run straight on again, so that each way of meeting a face is a smooth
// function of where the ray came from.
#pragma once

#include <array>
#include <vector>

#include "trace/bundle_kernel.hpp"

namespace beamfork {

/// The four ways in which the two faces are met: each first, or after the other.
enum class RoofHit : std::uint8_t { first, second, second_first, first_second };

/// Columns of numbers, a ray each, in the straightened path.
struct RoofMeetings {
    std::array<std::array<std::vector<double>, 3>, 4> at;  ///< by RoofHit; x, y, z
    std::array<std::vector<double>, 3> along;
    std::vector<double> swapped_by;  ///< by how much the first face is farther than the second

    [[nodiscard]] const std::array<std::vector<double>, 3>& of(RoofHit hit) const {
        return at.at(static_cast<std::size_t>(hit));
    }
};

/// Into columns that may be used again.
void meet_roof(const RoofFaces& roof, RayTrail& trail, std::size_t rays, RoofMeetings& met);

}  // namespace beamfork
