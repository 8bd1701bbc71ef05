// What one opening takes from the light, for signs in the picture and in the unfolded path.
#pragma once

#include <cstddef>
#include <string_view>

namespace beamfork {

struct EyeClipping;

/// From this share of the objective's light on, an opening is shown as one that takes light.
constexpr double share_that_shows = 0.02;

/// The most that one surface takes anywhere in the field, 0..1 of the objective's light.
struct Loss {
    double share = 0;
    bool is_leak = false;
    double in_middle = 0;  ///< of the field
    double at_edge = 0;
};

/// Where in the field it takes most: " at the edge", " everywhere", " at most".
std::string_view place_in_field(const Loss& loss);

Loss loss_at(const EyeClipping& clipping, std::size_t surface);

}  // namespace beamfork
