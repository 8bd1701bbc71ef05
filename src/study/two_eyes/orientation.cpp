#include "study/two_eyes/orientation.hpp"

#include <cmath>

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double as_good_as_straight = 3;  // degrees, our choice: not noticed at the eyepiece

bool is_near(double angle, double other) {
    return std::abs(std::remainder(angle - other, 360.0)) <= as_good_as_straight;
}

}  // namespace

ImageOrientation orientation_of(const glm::dmat2& stop_from_slope) {
    const glm::dmat2 seen = -stop_from_slope;  // columns: where right and up of the sky are seen
    ImageOrientation result;
    result.is_mirrored = glm::determinant(seen) < 0;
    // The best fitting turn of [a -b; b a], or of the same after x was reversed.
    const double right_sign = result.is_mirrored ? -1 : 1;
    const double cosine = right_sign * seen[0].x + seen[1].y;
    const double sine = right_sign * seen[0].y - seen[1].x;
    result.turn = to_degrees(Radians{std::atan2(sine, cosine)});
    return result;
}

std::array<ImageOrientation, 2> orientation(const Train& train) {
    return {orientation_of(field_map(train, Eye::left).stop_from_slope),
            orientation_of(field_map(train, Eye::right).stop_from_slope)};
}

std::string to_words(const ImageOrientation& orientation) {
    const double turn = orientation.turn.value;
    if (is_near(turn, 0)) return orientation.is_mirrored ? "mirrored left-right" : "upright";
    if (is_near(turn, 180)) return orientation.is_mirrored ? "mirrored up-down" : "turned by 180°";
    return fmt::format("{}turned by {:.0f}° {}",
                       orientation.is_mirrored ? "mirrored left-right and " : "", std::abs(turn),
                       turn > 0 ? "anticlockwise" : "clockwise");
}

bool is_erect(const ImageOrientation& orientation) {
    return !orientation.is_mirrored && is_near(orientation.turn.value, 0);
}

}  // namespace beamfork
