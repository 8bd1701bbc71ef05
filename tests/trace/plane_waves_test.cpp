#include <complex>
#include <numbers>

#include "support/near.hpp"
#include "trace/plane_waves.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// exp(2 pi i w) by the standard library.
std::complex<double> library_wave(double waves) {
    return std::polar(1.0, 2 * std::numbers::pi * waves);
}

}  // namespace

TEST_CASE("waves add up as the standard library's do, whatever their number") {
    for (const std::size_t count : {1U, 3U, 8U, 37U}) {
        std::vector<double> waves;
        std::complex<double> expected = 0;
        for (std::size_t i = 0; i < count; ++i) {
            waves.push_back(std::sin(1.7 * static_cast<double>(i)) * 40);
            expected += library_wave(waves.back());
        }
        const Amplitude sum = sum_of_waves(waves);
        // 40 waves are an angle of 250 rad: the library's argument itself is rounded to 3e-14.
        CHECK(near(sum.real, expected.real(), static_cast<double>(count) * 1e-13));
        CHECK(near(sum.imaginary, expected.imag(), static_cast<double>(count) * 1e-13));
    }
}

TEST_CASE("whole waves fall away and half a wave cancels") {
    const Amplitude whole = sum_of_waves(std::vector<double>{0, 1, -7, 123456});
    CHECK(near(whole.real, 4, rounding));
    CHECK(near(whole.imaginary, 0, rounding));
    const Amplitude none = sum_of_waves(std::vector<double>{0.25, 0.75});
    CHECK(near(none.squared(), 0, rounding));
}

TEST_CASE("over a grid every place has the sum of its own phases") {
    const int side = 7;
    WavesOverGrid waves;
    for (int i = 0; i < 21; ++i) {
        waves.phase.push_back(0.3 * i * i);
        waves.across.push_back(0.02 * i - 0.2);
        waves.up.push_back(0.11 - 0.013 * i);
    }
    const auto sums = sum_over_grid(waves, side);
    REQUIRE(sums.size() == 49);
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            std::complex<double> expected = 0;
            for (std::size_t i = 0; i < waves.phase.size(); ++i) {
                expected += library_wave(waves.phase[i] + (x - 3) * waves.across[i]
                                         + (y - 3) * waves.up[i]);
            }
            const Amplitude& sum = sums[static_cast<std::size_t>(y * side + x)];
            // 120 waves of phase: the library's argument is rounded to 1e-13, 21 times.
            CHECK(near(sum.real, expected.real(), 3e-12));
            CHECK(near(sum.imaginary, expected.imag(), 3e-12));
        }
    }
}
