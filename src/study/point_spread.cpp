#include "study/point_spread.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace beamfork {

namespace {

using Amplitude = std::complex<double>;

Amplitude times(Amplitude a, Amplitude b) {
    return {a.real() * b.real() - a.imag() * b.imag(), a.real() * b.imag() + a.imag() * b.real()};
}

// Real and imaginary parts apart: so the compiler adds several cells at once.
struct Amplitudes {
    std::vector<double> real, imaginary;
    explicit Amplitudes(std::size_t count) : real(count), imaginary(count) {}
};

// Phases of one direction cosine across the grid, by repeated turning.
void fill_row(Amplitudes& row, double first, double step) {
    Amplitude now = std::polar(1.0, first);
    const Amplitude turn = std::polar(1.0, step);
    for (std::size_t i = 0; i < row.real.size(); ++i) {
        row.real[i] = now.real();
        row.imaginary[i] = now.imag();
        now = times(now, turn);
    }
}

void add_line(double* real, double* imaginary, Amplitude up, const Amplitudes& across) {
    const double up_real = up.real();
    const double up_imaginary = up.imag();
    for (std::size_t x = 0; x < across.real.size(); ++x) {
        real[x] += up_real * across.real[x] - up_imaginary * across.imaginary[x];
        imaginary[x] += up_real * across.imaginary[x] + up_imaginary * across.real[x];
    }
}

Amplitudes amplitudes(const Wavefront& wavefront, const Point& focus, int cells, double cell) {
    const auto side = static_cast<std::size_t>(cells);
    Amplitudes sum(side * side);
    Amplitudes across(side);
    Amplitudes up(side);
    const double wave_number = 2 * std::numbers::pi / wavefront.wavelength;
    const double first = -(cells - 1) / 2.0 * cell;
    const double piston = path_to(wavefront.rays.front(), focus);
    for (const WavefrontRay& ray : wavefront.rays) {
        const double phase = wave_number * (path_to(ray, focus) - piston);
        fill_row(across, wave_number * first * ray.along.x, wave_number * cell * ray.along.x);
        fill_row(up, phase + wave_number * first * ray.along.y, wave_number * cell * ray.along.y);
        for (std::size_t y = 0; y < side; ++y) {
            add_line(&sum.real[y * side], &sum.imaginary[y * side], {up.real[y], up.imaginary[y]},
                     across);
        }
    }
    return sum;
}

}  // namespace

PointSpread point_spread(std::span<const WeightedWavefront> colours,
                         const Point& focus,
                         double focal_ratio,
                         int cells,
                         double cell) {
    BEAMFORK_EXPECTS(cells > 0 && cells % 2 == 1);
    PointSpread spread{cells, cell, {}, {}};
    spread.brightness.assign(static_cast<std::size_t>(cells * cells), 0);
    spread.energy = spread.brightness;
    double weights = 0;
    for (const auto& colour : colours)
        weights += colour.weight;
    for (const auto& [wavefront, weight] : colours) {
        const auto sum = amplitudes(*wavefront, focus, cells, cell);
        const auto count = static_cast<double>(wavefront->rays.size());
        const double peak = weight / weights / (count * count);
        // Perfect peak per unit of energy: the pupil's area in direction cosines over the wavelength squared.
        const double pupil =
            std::numbers::pi * wavefront->share()
            / (4 * focal_ratio * focal_ratio * wavefront->wavelength * wavefront->wavelength);
        for (std::size_t i = 0; i < sum.real.size(); ++i) {
            const double bright =
                peak * (sum.real[i] * sum.real[i] + sum.imaginary[i] * sum.imaginary[i]);
            spread.brightness[i] += bright;
            spread.energy[i] += bright * pupil * cell * cell;
        }
    }
    return spread;
}

namespace {

// Share of a unit square about (x, y) within a circle about the origin, by 5 x 5 points where the edge crosses it.
double share_inside(double x, double y, double radius) {
    constexpr double half_diagonal = 0.7072;
    const double away = std::hypot(x, y);
    if (away > radius + half_diagonal) return 0;
    if (away < radius - half_diagonal) return 1;
    int inside = 0;
    for (int i = -2; i <= 2; ++i) {
        for (int j = -2; j <= 2; ++j)
            inside += std::hypot(x + 0.2 * i, y + 0.2 * j) <= radius ? 1 : 0;
    }
    return inside / 25.0;
}

}  // namespace

double energy_within(const PointSpread& spread, double radius) {
    if (radius <= 0) return 0;
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
