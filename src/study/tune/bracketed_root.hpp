// Where a function crosses zero between two places of opposite sign.
#pragma once

#include <algorithm>
#include <cmath>

namespace beamfork {

/// The bracket that is left: the crossing, or a jump past zero, lies between both ends.
struct Bracket {
    double low = 0;
    double high = 0;
    double at_low = 0;  ///< the function's value there
    double at_high = 0;
    [[nodiscard]] double middle() const { return (low + high) / 2; }
};

/// Narrows a bracket to `width` by interpolation, truncation and projection: as fast as the secant method where the
/// function is smooth, never slower than halving by more than one step, and at home at jumps, too (I. F. D. Oliveira
/// and R. H. C. Takahashi, ACM Trans. Math. Software 47 (1), art. 5, 2020, from memory; kappa1 = 0.2 / (high - low),
/// kappa2 = 2, n0 = 1). The values at both ends must have opposite signs or be 0; `width` must be above 0.
template <class Function>
Bracket narrow_bracket(const Function& function, Bracket bracket, double width) {
    const double sign = bracket.at_low <= bracket.at_high ? 1 : -1;
    double low = sign * bracket.at_low;
    double high = sign * bracket.at_high;
    if (low == 0) bracket.high = bracket.low;
    if (high == 0) bracket.low = bracket.high;
    if (low == 0 || high == 0) return {bracket.low, bracket.high, 0, 0};
    const double tolerance = width / 2;
    const double kappa = 0.2 / (bracket.high - bracket.low);
    const double halvings =
        std::ceil(std::log2(std::max(1.0, (bracket.high - bracket.low) / width))) + 1;
    double left = tolerance * std::exp2(halvings);  // how far from the middle a step may go
    while (bracket.high - bracket.low > width) {
        const double middle = bracket.middle();
        const double half = (bracket.high - bracket.low) / 2;
        const double reach = std::max(0.0, left - half);
        const double secant = (high * bracket.low - low * bracket.high) / (high - low);
        const double towards = middle >= secant ? 1 : -1;
        const double nudge = std::min(kappa * 4 * half * half, std::abs(middle - secant));
        const double tried = secant + towards * nudge;
        double at = std::abs(tried - middle) <= reach ? tried : middle - towards * reach;
        at = std::clamp(at, bracket.low + tolerance / 4, bracket.high - tolerance / 4);
        const double value = sign * function(at);
        if (value == 0) return {at, at, 0, 0};
        (value < 0 ? bracket.low : bracket.high) = at;
        (value < 0 ? low : high) = value;
        left /= 2;
    }
    bracket.at_low = sign * low;
    bracket.at_high = sign * high;
    return bracket;
}

}  // namespace beamfork
