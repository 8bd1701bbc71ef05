#include "scene/picture/pupil_paint.hpp"

#include <cmath>

namespace beamfork {

PupilPlace pupil_place(glm::vec2 pupil) {
    if (glm::length(pupil) < middle_zone_radius) return PupilPlace::middle;
    if (std::abs(pupil.y) >= std::abs(pupil.x))
        return pupil.y > 0 ? PupilPlace::top : PupilPlace::bottom;
    return pupil.x > 0 ? PupilPlace::right : PupilPlace::left;
}

}  // namespace beamfork
