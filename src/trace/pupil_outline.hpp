// How much of the pupil stays lit within bounds, and what each bound takes: the pupil is looked at along azimuths from a
// point of its lit part; on each, every bound lets light pass on a stretch that ends where its edge crosses.
#pragma once

#include <span>
#include <vector>

#include "trace/pupil_map.hpp"

namespace beamfork {

struct PupilLight {
    double lit = 1;            ///< share of the pupil's area, 0..1
    std::vector<double> lost;  ///< share that ends at each bound; with `lit` the whole: 1
    /// How far `lit` may be wrong because the bounds are not quite cubics: the rays' departure from them laid along
    /// every edge that crosses the pupil. Infinite where a bound bends too much to be followed.
    double doubt = 0;
};

/// Light ends at the first bound, in their order, that stops it. `found` may be used again.
void find_pupil_light(std::span<const PupilBound> bounds, PupilLight& found);
inline PupilLight pupil_light(std::span<const PupilBound> bounds) {
    PupilLight found;
    find_pupil_light(bounds, found);
    return found;
}

}  // namespace beamfork
