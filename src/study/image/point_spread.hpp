// The image of a star at its focus, by summing the wavefront's rays as waves: brightness on a small square grid, and
// how much of the light lies within a circle.
#pragma once

#include "study/image/wavefront.hpp"

namespace beamfork {

struct PointSpread {
    int cells = 0;        ///< along each side, odd: the middle cell is the focus
    Millimetres cell{0};  ///< width of one
    std::vector<double>
        brightness;  ///< row by row, 1: peak of the perfect image through the same openings
    std::vector<double>
        energy;  ///< share of one cell's worth of light: sums to the light within the grid
    [[nodiscard]] Millimetres half_width() const { return cell * cells / 2; }
};

/// In the plane of the field stop through `focus`. Fraunhofer's sum over the rays (J. W. Goodman, Introduction to
/// Fourier Optics, sec. 4.3, from memory); good out to about half the root of the number of rays, in
/// wavelengths times the f-number.
PointSpread point_spread(std::span<const WeightedWavefront> colours,
                         const Point& focus,
                         double focal_ratio,
                         int cells,
                         Millimetres cell);

/// Share of the light that arrives within a radius about the focus, 0..1.
double energy_within(const PointSpread& spread, Millimetres radius);

}  // namespace beamfork
