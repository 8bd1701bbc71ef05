// White light and the eye's colour against sums made in another language, published values and closed forms.
#include <cmath>

#include "glass/glass.hpp"
#include "parts/eyepiece_pair.hpp"
#include "reference/white_light.hpp"
#include "study/focus/diffraction.hpp"
#include "study/image/white_light.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"
#include "support/white_plate.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double plate_focal_length = 400;

// All three lines behind a plate of that glass in the cone of an ideal objective.
Colours behind_plate(const std::string& glass, double thickness, double f_number, int rays = 96) {
    const Glass known = standard_catalogue().find(glass).value();
    Train train;
    train.objective_focal_length = plate_focal_length;
    train.objective_radius = plate_focal_length / (2 * f_number);
    train.object_distance = std::numeric_limits<double>::infinity();
    Colours colours;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        const double index = refractive_index(known, traced_wavelengths[w]).value();
        PathMaker maker;
        const EyePath path = maker.objective(plate_focal_length)
                                 .face(translation(0, 0, 50), index)
                                 .face(translation(0, 0, 50 + thickness), 1)
                                 .ending_at(translation(0, 0, plate_focal_length));
        colours[w] = trace_wavefront(train, path, {0, 0}, sunflower(rays), w);
    }
    return colours;
}

double peak_through(const Colours& colours, double f_number, double exit_pupil) {
    WhiteLight light(colours);
    if (exit_pupil > 0) light = light.through_eye(Millimetres{exit_pupil * f_number});
    return sharpest(light.weighted(), depth_of_focus(f_number)).peak;
}

}  // namespace

TEST_CASE("the peak in white light behind a plate is that of an independent integral, before and "
          "behind the eye") {
    for (const auto& row : reference::white_peaks) {
        CAPTURE(row.glass);
        CAPTURE(row.thickness);
        CAPTURE(row.f_number);
        CAPTURE(row.exit_pupil);
        const Colours colours = behind_plate(row.glass, row.thickness, row.f_number);
        // Steps of 15 nm for 5 nm: 0.003; 96 rays, and 1/n by the parabola: less.
        CHECK(near(peak_through(colours, row.f_number, row.exit_pupil), row.peak, 0.005));
        CHECK(near(test_setups::plate_peak(row.glass, row.thickness, row.f_number, row.exit_pupil),
                   row.peak, 5e-4));
    }
}

TEST_CASE("three traced lines tell 1/n of every glass of the catalogue at every wavelength") {
    for (const Glass& glass : standard_catalogue().glasses) {
        CAPTURE(glass.name);
        for (std::size_t line = 0; line < white_lines.size(); ++line) {
            double told = 0;
            for (std::size_t w = 0; w < wavelength_count; ++w)
                told += white_shares()[line][w]
                        / refractive_index(glass, traced_wavelengths[w]).value();
            const double own = 1 / refractive_index(glass, white_lines[line].wavelength).value();
            CHECK(near(told, own, 4e-5));
        }
    }
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        const PerWavelength shares = shares_of_traced(traced_wavelengths[w]);
        for (std::size_t other = 0; other < wavelength_count; ++other)
            CHECK(near(shares[other], other == w ? 1 : 0, 1e-12));
    }
}

TEST_CASE("white light has the weights of CIE 1924") {
    double sum = 0;
    for (const WhiteLine& line : white_lines) {
        const auto place =
            static_cast<std::size_t>(std::lround((in_nanometres(line.wavelength) - 390) / 5));
        CHECK(line.y == test_setups::photopic.at(place));
        sum += 15 * line.y;
    }
    // The integral of V over wavelength: 106.857 nm in steps of 1 nm (CIE 15:2004).
    CHECK(near(sum, 106.857, 0.3));
}

TEST_CASE("the eye is about a dioptre short-sighted in blue against red, and wants blue farther "
          "out") {
    // The formula, worked by hand: 633.46 / (486.1327 - 214.102) = 2.32863 and / 442.1705 = 1.43262.
    CHECK(near(eye_refraction(spectral_line::F).value, -0.64339, 1e-5));
    CHECK(near(eye_refraction(spectral_line::C).value, 0.25262, 1e-5));
    CHECK(near(eye_refraction(nanometres(589)).value, 0, 0.01));  // its wavelength in focus
    // f^2 / 1000 mm a dioptre: 0.625 for 25 mm.
    const double apart = eye_wants_behind_green(spectral_line::F, Millimetres{25}).value
                         - eye_wants_behind_green(spectral_line::C, Millimetres{25}).value;
    CHECK(near(apart, 0.625 * (0.64339 + 0.25262), 1e-4));
    CHECK(eye_wants_behind_green(spectral_line::e, Millimetres{25}).value == 0);
}

TEST_CASE("a perfect telescope is seen as sharp as the eye's own colour lets it") {
    Colours ideal = behind_plate("N-BAK4", 0.001, 7);
    ideal = perfect(ideal, {0, 0, 0});
    CHECK(near(peak_through(ideal, 7, 0), 1, 1e-9));
    CHECK(near(peak_through(ideal, 7, 1e-3), 1, 1e-6));
    for (const double pupil : {1.0, 2.0, 3.6})
        CHECK(near(peak_through(ideal, 7, pupil), test_setups::plate_peak("N-BAK4", 0, 7, pupil),
                   0.005));
}

TEST_CASE("rays that one colour loses are dropped from all") {
    Colours colours = behind_plate("N-BK7", 50, 8, 40);
    colours[0].rays.erase(colours[0].rays.begin() + 3);
    colours[2].rays.erase(colours[2].rays.begin());
    colours[2].rays.pop_back();
    keep_common_rays(colours);
    for (const Wavefront& wavefront : colours) {
        REQUIRE(wavefront.rays.size() == 37);
        for (std::size_t i = 0; i < 37; ++i)
            CHECK(wavefront.rays[i].pupil == colours[0].rays[i].pupil);
    }
}
