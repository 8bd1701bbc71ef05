// Peak of a star in white light behind a plate of glass, as tests/reference/white_light.py works it out: for the
// thicknesses that a setup happens to have. white_light_test.cpp holds it to that script's table.
#pragma once

#include <array>
#include <cmath>
#include <complex>
#include <numbers>
#include <string>

#include "glass/glass.hpp"

namespace test_setups {

/// V(lambda), CIE 1924, every 5 nm from 390 nm on (CIE 15:2004, Colorimetry).
inline constexpr std::array photopic{
    .000120, .000217, .000396, .000640, .001210, .002180, .004000, .007300, .011600,
    .016840, .023000, .029800, .038000, .048000, .060000, .073900, .090980, .112600,
    .139020, .169300, .208020, .258600, .323000, .407300, .503000, .608200, .710000,
    .793200, .862000, .914850, .954000, .980300, .994950, 1.00000, .995000, .978600,
    .952000, .915400, .870000, .816300, .757000, .694900, .631000, .566800, .503000,
    .441200, .381000, .321000, .265000, .217000, .175000, .138200, .107000, .081600,
    .061000, .044580, .032000, .023200, .017000, .011920, .008210, .005723, .004102,
    .002929, .002091, .001484, .001047, .000740, .000520, .000361, .000249};

/// mm; an exit pupil of 0: before any eye looks.
inline double plate_peak(const std::string& glass, double t, double f_number, double exit_pupil) {
    constexpr int rings = 48;
    const auto known = beamfork::standard_catalogue().find(glass).value();
    const auto eye = [](double nm) { return 1.68524 - 633.46 / (nm - 214.102); };
    const auto index = [&](double nm) {
        return beamfork::refractive_index(known, beamfork::nanometres(nm)).value();
    };
    const auto peak = [&](double z) {
        double sum = 0;
        double weights = 0;
        for (std::size_t i = 0; i < photopic.size(); ++i) {
            const double nm = 390.0 + 5 * static_cast<double>(i);
            const double n = index(nm);
            std::complex<double> amplitude = 0;
            for (int ring = 0; ring < rings; ++ring) {
                const double s2 = (ring + 0.5) / rings / (4 * f_number * f_number);
                const double cosine = std::sqrt(1 - s2);
                const double height = std::sqrt(s2) * f_number * exit_pupil;
                const double path = t * (std::sqrt(n * n - s2) - cosine - n)
                                    + eye(nm) / 1000 * height * height / 2 + z * cosine;
                amplitude += std::polar(1.0 / rings, 2 * std::numbers::pi * path / (nm * 1e-6));
            }
            sum += photopic[i] * std::norm(amplitude);
            weights += photopic[i];
        }
        return sum / weights;
    };
    const double n = index(555);
    const double depth = 2 * 555e-6 * f_number * f_number;
    const double start = t * (1 - 1 / n) + eye(555) / 1000 * std::pow(f_number * exit_pupil, 2)
                         + t * (n * n - 1) / (16 * n * n * n * f_number * f_number);
    double best = 0;
    double at = start;
    const auto consider = [&](double place) {
        const double there = peak(place);
        if (there <= best) return;
        best = there;
        at = place;
    };
    for (int k = -16; k <= 16; ++k)
        consider(start + depth * k / 2);
    for (double step = depth / 4; step > depth / 100; step /= 2) {
        const double from = at;
        consider(from - step);
        consider(from + step);
    }
    return best;
}

}  // namespace test_setups
