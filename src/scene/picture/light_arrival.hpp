// When light comes to both eyes: the optical path along the axis, index times length, which is what time follows. In
// glass light is slower; the light path of the focus budget (length over index) is another thing.
#pragma once

#include <string>

#include "scene/picture/frame.hpp"
#include "train/train.hpp"

namespace beamfork {

/// Traced along the axis of each eye as if nothing stood in the light.
LightArrival light_arrival(const Train& train);

/// Optical path from the splitter to that eye's field stop, mm.
double from_splitter(const LightArrival& arrival, Eye eye);

/// Packets of light follow each other at this distance of optical path, mm: farther than any head is long, so that
/// one packet at a time is divided.
constexpr float packet_spacing_mm = 240;

/// How far the packets have come when one that was at `front_mm` has gone on for `seconds`; 0 .. packet_spacing_mm.
float packets_after(float front_mm, float speed_mm_s, double seconds);

/// How brightly something that light meets at `path_mm` glows, 0 .. 1: at once when a packet comes, then fading.
float glow_at(double path_mm, float front_mm);

/// What is told of light in motion; paths are those from the splitter.
struct ArrivalWords {
    std::string pace;
    std::string left;   ///< "148.02 mm"
    std::string right;  ///< likewise
    std::string verdict;
};
ArrivalWords arrival_words(const LightArrival& arrival, float speed_mm_s);

}  // namespace beamfork
