// Rings of the field: the light of all their directions together. Prisms are square and so are leaks' edges straight:
// around a ring light comes and goes, and a few fixed directions would see of it what happens to lie in them.
//
// Fifteen directions, a number that shares no factor with the symmetry of squares: a square is seen as from sixty. Where
// light goes on or out between two of them at once (an image close to a prism's face), the ring is looked at in three
// times as many, twice if need be. Means are within 0.005 of the mean of 720 directions
// (tests/study/light/lit_ring_test.cpp).
#pragma once

#include "study/light/clipping.hpp"
#include "study/light/few_ray_light.hpp"
#include "study/light/lit_path.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

/// What is found of rings.
struct RingLight {
    std::vector<LitRing> rings;  ///< in the order in which they were asked for
    std::vector<LitPoint>
        points;  ///< of the fixed directions: one for ring 0, `lit_azimuth_count` for the others
    double obstructed = 0;  ///< at the first place, of all the aperture's light
};

/// `rings` are their numbers, 0 to `lit_ring_count`, the first of which is looked at in any case. Of the others those up
/// to `fully_lit` (of the field stop's radius) are known to be lit in full.
RingLight
ring_light(LitPath& way, std::span<const int> rings, double fully_lit, ClippingEffort effort);

}  // namespace beamfork
