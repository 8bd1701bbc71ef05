#include "study/focus/chance_curve.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace beamfork {

double normal_below_zero(double mean, double standard) {
    if (standard <= 0) return mean < 0 ? 1 : 0;
    return std::erfc(mean / standard / std::numbers::sqrt2) / 2;
}

namespace {

constexpr std::size_t cells = 1024;

// The integral of a normal value's chance to lie below x, from far left to x: s (z P(z) + p(z)) with z = x / s.
double normal_ramp(double x, double standard) {
    if (standard <= 0) return std::max(x, 0.0);
    const double z = x / standard;
    const double density = std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
    return standard * (z * normal_below_zero(-z, 1) + density);
}

// Of a grid's chances the mean over `half` to either side of each place. Straight between places.
std::vector<double> running_mean(const std::vector<double>& chance, double end, double half) {
    const double step = 2 * end / cells;
    std::vector<double> sum(chance.size(), 0);
    for (std::size_t i = 1; i < chance.size(); ++i)
        sum[i] = sum[i - 1] + step * (chance[i - 1] + chance[i]) / 2;
    const auto integral = [&](double place) {
        if (place <= -end) return 0.0;
        if (place >= end) return sum.back() + (place - end);
        const double cell = (place + end) / step;
        const auto i = std::min(static_cast<std::size_t>(cell), cells - 1);
        const double part = cell - static_cast<double>(i);
        return sum[i] + step * part * (chance[i] + part * (chance[i + 1] - chance[i]) / 2);
    };
    std::vector<double> mean(chance.size());
    for (std::size_t i = 0; i < mean.size(); ++i) {
        const double place = -end + step * static_cast<double>(i);
        mean[i] = (integral(place + half) - integral(place - half)) / (2 * half);
    }
    return mean;
}

}  // namespace

ChanceCurve::ChanceCurve(std::vector<double> half_widths, double normal) {
    std::sort(half_widths.begin(), half_widths.end(), std::greater{});
    double variance = normal * normal;
    for (const double half : half_widths)
        variance += half * half / 3;
    standard_ = std::sqrt(variance);
    // Too narrow for the grid to see: as good as normal beside the others.
    double round = normal * normal;
    while (!half_widths.empty() && half_widths.back() < 1e-3 * standard_) {
        round += half_widths.back() * half_widths.back() / 3;
        half_widths.pop_back();
    }
    const double normal_part = std::sqrt(round);
    end_ = std::accumulate(half_widths.begin(), half_widths.end(), 6 * normal_part);
    if (end_ <= 0) return;
    chance_.resize(cells + 1);
    for (std::size_t i = 0; i <= cells; ++i) {
        const double place = end_ * (2 * static_cast<double>(i) / cells - 1);
        if (half_widths.empty()) {
            chance_[i] = normal_below_zero(-place, normal_part);
            continue;
        }
        const double half = half_widths.front();
        chance_[i] =
            (normal_ramp(place + half, normal_part) - normal_ramp(place - half, normal_part))
            / (2 * half);
    }
    for (std::size_t i = 1; i < half_widths.size(); ++i)
        chance_ = running_mean(chance_, end_, half_widths[i]);
}

double ChanceCurve::below(double limit) const {
    if (limit <= -end_) return 0;
    if (limit > end_ || chance_.empty()) return 1;
    const double cell = (limit + end_) / (2 * end_) * cells;
    const auto i = std::min(static_cast<std::size_t>(cell), cells - 1);
    return std::clamp(std::lerp(chance_[i], chance_[i + 1], cell - static_cast<double>(i)), 0.0,
                      1.0);
}

double ChanceCurve::standard() const { return standard_; }

}  // namespace beamfork
