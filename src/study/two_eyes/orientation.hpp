// How the image stands in each eye, against the view without a telescope: from traced chief rays of small field
// offsets, not from counting mirrors.
#pragma once

#include <array>
#include <string>

#include "trace/sampling.hpp"

namespace beamfork {

struct ImageOrientation {
    bool is_mirrored = false;
    /// Anticlockwise turn of the image as the eye sees it, -180..180; of a mirrored image, the turn after
    /// left and right were exchanged.
    Degrees turn{0};
    bool operator==(const ImageOrientation&) const = default;
};

/// Of a linear map from field slopes (world x and y) to places on the field stop (its frame, x right, y up
/// as the eye behind it sees them). Light from a point to the right of the axis travels to the left, so
/// the seen image is the map's negative.
ImageOrientation orientation_of(const glm::dmat2& stop_from_slope);

/// Left and right eye.
std::array<ImageOrientation, 2> orientation(const Train& train);

/// "upright", "turned by 180°", "mirrored left-right", "mirrored up-down", with what is left of a turn.
std::string to_words(const ImageOrientation& orientation);

/// Upright and the right way round, within a few degrees.
bool is_erect(const ImageOrientation& orientation);

}  // namespace beamfork
