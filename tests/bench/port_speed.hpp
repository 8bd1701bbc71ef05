// How fast the processor's units are at what tracing is made of, with the widest vectors it has, and the least time that
// a path's surfaces need at that speed.
#pragma once

#include "trace/ray.hpp"

namespace bench {

using namespace beamfork;

/// How many numbers each of the three below works through.
constexpr double spent_numbers = 4'000'000;
/// Fused products and sums, divisions, square roots, none of which waits for another.
void spend_products();
void spend_divisions();
void spend_roots();

/// Seconds for one number.
struct PortTimes {
    double product = 0;
    double division = 0;
    double root = 0;
};

/// For one ray through all surfaces, if products were made beside divisions and roots, nothing waited and memory
/// cost nothing. The least work of each kind of surface is counted by hand from the formulas: a plane refraction 17
/// products, a division and a root; a mirror with its test 16 and a division; an opening 13 and a division; an ideal lens with
/// its exact path 28, two divisions and a root.
double least_time(const EyePath& path, const PortTimes& each);

}  // namespace bench
