// What an ideal thin corrector plate adds to the optical path: nothing in its middle, and with the square of the distance
// from the axis, q = r^2, q^2 (t0 + t1 q + t2 q^2 + ...). There is no term in r^2, so that it moves no paraxial image.
// Lengths in mm. Positive where light is held up more than in the middle: there rays turn outward.
#pragma once

#include <array>
#include <cstddef>

namespace beamfork {

struct PhaseProfile {
    static constexpr std::size_t count = 5;
    std::array<double, count> terms{};  ///< of r^4, r^6, ... : 1/mm^3, 1/mm^5, ...
    bool operator==(const PhaseProfile&) const = default;

    /// Added path where q = r^2, mm.
    [[nodiscard]] constexpr double path(double q) const {
        double sum = 0;
        for (std::size_t i = count; i-- > 0;)
            sum = sum * q + terms[i];
        return sum * q * q;
    }
    /// How much that grows per mm outward, over r: by `turn_over_radius(q)` times its place (x, y) a ray's direction, of
    /// the length of its medium's index, is turned across the axis.
    [[nodiscard]] constexpr double turn_over_radius(double q) const {
        double sum = 0;
        for (std::size_t i = count; i-- > 0;)
            sum = sum * q + (static_cast<double>(i) + 2) * terms[i];
        return 2 * sum * q;
    }
};

}  // namespace beamfork
