// Plane waves added up: the inner loops of Strehl ratios and diffraction pictures, in the widest vectors that the
// processor has. Phases are in waves, so that whole turns fall away exactly. True to a few units of the last digit; the
// digits beyond depend on the processor.
#pragma once

#include <span>
#include <vector>

namespace beamfork {

struct Amplitude {
    double real = 0;
    double imaginary = 0;
    [[nodiscard]] double squared() const { return real * real + imaginary * imaginary; }
};

/// Sum of exp(2 pi i w) over all w, in waves.
Amplitude sum_of_waves(std::span<const double> waves);

/// Waves over a square grid of `side` x `side` places (odd) about its middle: each with its phase in the middle and
/// its growth from place to place, in waves.
struct WavesOverGrid {
    std::vector<double> phase;
    std::vector<double> across;  ///< per place along x
    std::vector<double> up;      ///< per place along y
};

/// Their sum at each place, rows of growing x from the lowest y.
std::vector<Amplitude> sum_over_grid(const WavesOverGrid& waves, int side);

}  // namespace beamfork
