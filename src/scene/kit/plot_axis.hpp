// The axis of a plot: round numbers at their places.
#pragma once

#include <string>
#include <vector>

namespace beamfork {

struct AxisTick {
    double place = 0;  ///< 0 at the low end, 1 at the high end
    std::string text;  ///< digits only
};

/// Multiples of 1, 2 or 5 times a power of ten, about `wanted` of them; `low` must be below `high`.
std::vector<AxisTick> even_ticks(double low, double high, int wanted);
/// 1, 2 and 5 of every decade, or the decades alone where there are many; `low` must be above 0.
std::vector<AxisTick> logarithmic_ticks(double low, double high);

}  // namespace beamfork
