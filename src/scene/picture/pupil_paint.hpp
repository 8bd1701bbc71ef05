// The objective painted in zones: each ray bears the colour of where it came in, so that one can follow where each
// part of the objective's light goes.
//
// Five zones, each of another hue and another lightness, none a role of the palette that rays have: colour-blind eyes
// keep them apart (tests/ui/colour_vision_test.cpp), and in red light their brightness does.
#pragma once

#include <array>
#include <cstdint>

#include "scene/picture/frame.hpp"

namespace beamfork {

struct PupilZone {
    const char* name;
    std::uint32_t srgb_hex;
};

/// Seen from behind the telescope, as one looks through it: right is the world's +x, top its +y.
enum class PupilPlace { middle, top, right, left, bottom };
inline constexpr std::array pupil_places{PupilPlace::middle, PupilPlace::top, PupilPlace::right,
                                         PupilPlace::left, PupilPlace::bottom};

/// From the lightest to the darkest.
constexpr PupilZone pupil_zone(PupilPlace place) {
    switch (place) {
    case PupilPlace::middle: return {"middle", 0xFFFFFF};
    case PupilPlace::top: return {"top", 0xFFC27A};
    case PupilPlace::right: return {"right", 0xE079C8};
    case PupilPlace::left: return {"left", 0x0B8A70};
    case PupilPlace::bottom: return {"bottom", 0x3444E0};
    }
    return {"middle", 0xFFFFFF};
}

/// The middle zone's radius in units of the objective's.
constexpr float middle_zone_radius = 0.5F;

/// Of a point in units of the objective's radius.
PupilPlace pupil_place(glm::vec2 pupil);

}  // namespace beamfork
