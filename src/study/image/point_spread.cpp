#include "study/image/point_spread.hpp"

#include <cmath>
#include <numbers>

#include "trace/plane_waves.hpp"

namespace beamfork {

namespace {

WavesOverGrid waves_of(const Wavefront& wavefront, const Point& focus, Millimetres cell) {
    WavesOverGrid waves;
    const double per_mm = 1 / to_millimetres(wavefront.wavelength).value;
    const double piston = path_to(wavefront.rays.front(), focus);
    for (const WavefrontRay& ray : wavefront.rays) {
        waves.phase.push_back(per_mm * (path_to(ray, focus) - piston));
        waves.across.push_back(per_mm * cell.value * ray.along.x);
        waves.up.push_back(per_mm * cell.value * ray.along.y);
    }
    return waves;
}

}  // namespace

PointSpread point_spread(std::span<const WeightedWavefront> colours,
                         const Point& focus,
                         double focal_ratio,
                         int cells,
                         Millimetres cell) {
    BEAMFORK_EXPECTS(cells > 0 && cells % 2 == 1);
    PointSpread spread{cells, cell, {}, {}};
    spread.brightness.assign(static_cast<std::size_t>(cells * cells), 0);
    spread.energy = spread.brightness;
    double weights = 0;
    for (const auto& colour : colours)
        weights += colour.weight;
    for (const auto& [wavefront, weight] : colours) {
        const auto sum = sum_over_grid(waves_of(*wavefront, focus, cell), cells);
        const auto count = static_cast<double>(wavefront->rays.size());
        const double wavelength = to_millimetres(wavefront->wavelength).value;
        const double peak = weight / weights / (count * count);
        // Perfect peak per unit of energy: the pupil's area in direction cosines over the wavelength squared.
        const double pupil = std::numbers::pi * wavefront->share()
                             / (4 * focal_ratio * focal_ratio * wavelength * wavelength);
        for (std::size_t i = 0; i < sum.size(); ++i) {
            const double bright = peak * sum[i].squared();
            spread.brightness[i] += bright;
            spread.energy[i] += bright * pupil * cell.value * cell.value;
        }
    }
    return spread;
}

namespace {

// Share of a unit square about (x, y) within a circle about the origin, by 5 x 5 points where the edge crosses it.
double share_inside(double x, double y, double radius) {
    constexpr double half_diagonal = 0.7072;
    const double away_squared = x * x + y * y;
    const double out = radius + half_diagonal;
    const double in = radius - half_diagonal;
    if (away_squared > out * out) return 0;
    if (in > 0 && away_squared < in * in) return 1;
    int inside = 0;
    for (int i = -2; i <= 2; ++i) {
        for (int j = -2; j <= 2; ++j) {
            const double u = x + 0.2 * i;
            const double v = y + 0.2 * j;
            inside += u * u + v * v <= radius * radius ? 1 : 0;
        }
    }
    return inside / 25.0;
}

}  // namespace

double energy_within(const PointSpread& spread, Millimetres radius) {
    if (radius <= Millimetres{0}) return 0;
    double sum = 0;
    const double middle = (spread.cells - 1) / 2.0;
    std::size_t i = 0;
    for (int y = 0; y < spread.cells; ++y) {
        for (int x = 0; x < spread.cells; ++x, ++i)
            sum += spread.energy[i] * share_inside(x - middle, y - middle, radius / spread.cell);
    }
    return sum;
}

}  // namespace beamfork
