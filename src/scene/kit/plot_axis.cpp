#include "scene/kit/plot_axis.hpp"

#include <algorithm>
#include <cmath>

#include "base/contract.hpp"
#include "base/text.hpp"

namespace beamfork {

std::vector<AxisTick> even_ticks(double low, double high, int wanted) {
    BEAMFORK_EXPECTS(low < high && wanted > 0);
    const double wish = (high - low) / wanted;
    const double decade = std::pow(10, std::floor(std::log10(wish)));
    double step = 10 * decade;
    for (const double factor : {5.0, 2.0, 1.0}) {
        if (factor * decade >= wish * (1 - 1e-9)) step = factor * decade;
    }
    const int decimals = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
    std::vector<AxisTick> ticks;
    for (double i = std::ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; ++i)
        ticks.push_back({(i * step - low) / (high - low), format_number(i * step, decimals)});
    return ticks;
}

std::vector<AxisTick> logarithmic_ticks(double low, double high) {
    BEAMFORK_EXPECTS(low > 0 && low < high);
    const double decades = std::log10(high / low);
    std::vector<AxisTick> ticks;
    for (double decade = std::floor(std::log10(low)); decade <= std::log10(high); ++decade) {
        for (const double factor : {1.0, 2.0, 5.0}) {
            if (factor > 1 && decades > 2.5) continue;
            const double value = factor * std::pow(10, decade);
            if (value < low * (1 - 1e-9) || value > high * (1 + 1e-9)) continue;
            const int decimals = std::max(0, static_cast<int>(-decade));
            ticks.push_back(
                {std::log(value / low) / std::log(high / low), format_number(value, decimals)});
        }
    }
    return ticks;
}

}  // namespace beamfork
