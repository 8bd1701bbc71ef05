// The focus by traced rays against the paraxial one and against the handbook's plane plate.
#include <cmath>

#include "parts/filter_plate.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "study/focus/focus_budget.hpp"
#include "study/focus/real_focus.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

Train focused(const Setup& setup) {
    const auto budget = focus_budget(setup, setup.chosen);
    REQUIRE(budget.has_value());
    auto train = build_train(setup, setup.chosen, budget->drawtube);
    REQUIRE(train.has_value());
    return *std::move(train);
}

double index(const std::string& glass, Micrometres wavelength) {
    return refractive_index(standard_catalogue().find(glass).value(), wavelength).value();
}

// Marginal minus paraxial focus behind a plate, (t/n) [1 - n cosU / sqrt(n^2 - sin^2 U)]: W. J. Smith, Modern Optical
// Engineering, 4th ed., sec. 7.8, Fig. 7.14, exact form.
double plate_spherical(double thickness, double n, double sine) {
    const double cosine = std::sqrt(1 - sine * sine);
    return thickness / n * (1 - n * cosine / std::sqrt(n * n - sine * sine));
}

}  // namespace

TEST_CASE("rays close to the axis meet where the paraxial image is") {
    for (const auto& chain : {std::vector<Part>{},
                              {{"Diagonal", PrismDiagonal{}, {}}},
                              {bare_lens(-150, 0)},
                              {bare_lens(-150, 0), {"Diagonal", MirrorDiagonal{}, {}}}}) {
        for (const double drawtube : {0.0, 20.0, 55.0}) {
            Setup setup = wide_setup(chain);
            the<Focuser>(setup).held_at = Millimetres{drawtube};
            const Train train = focused(setup);
            for (const Eye eye : both_eyes) {
                const double image = image_behind_stop(train, eye).value;
                // Rays at 1/100 of the aperture: their own aberration is 1e-4 of the marginal one, which is below
                // 0.2 mm; a lens in front scales it with the distance squared.
                CHECK(near(real_focus(train, eye).near_axis.value, image,
                           2e-5 * (1 + image * image / 1e3)));
            }
        }
    }
}

TEST_CASE("with nothing tilted the marginal focus differs from the paraxial one as all the glass "
          "in one plate") {
    for (const double focal_length : {500.0, 700.0, 1000.0}) {
        CAPTURE(focal_length);
        Setup setup = wide_setup({{"Filter", FilterPlate{}, {}}});
        the<Refractor>(setup).focal_length = Millimetres{focal_length};
        const Train train = focused(setup);
        const double sine = 50 / focal_length;  // the objective obeys the sine condition
        const double glass = 2 * 50 + 52;  // cube, right-angle prism or rhomboid, and compensator
        const double n = index("N-BAK4", spectral_line::e);
        const double filter = index("N-BK7", spectral_line::e);
        const auto spherical = [&](double zone) {
            return plate_spherical(glass, n, zone * sine) + plate_spherical(2, filter, zone * sine);
        };
        const double expected = spherical(1);
        for (const Eye eye : both_eyes) {
            const RealFocus focus = real_focus(train, eye);
            // The rays near the axis are those at 1/100 of the aperture; rounding, over their small slope.
            CHECK(near(focus.marginal.value - focus.near_axis.value, expected - spherical(0.01),
                       1e-8));
            CHECK(focus.marginal.value > focus.near_axis.value);  // plates over-correct
            // Third-order spherical: the smallest root-mean-square spot lies at 2/3 of the marginal aberration and its
            // radius is 1/6 of the transverse one (least squares over an evenly filled pupil, derived here). Tolerance:
            // 64 rays, and orders above the third at f/5.
            CHECK(near((focus.best - focus.near_axis).value / expected, 2.0 / 3, 0.02));
            const double tangent = sine / std::sqrt(1 - sine * sine);
            CHECK(near(focus.spot_rms, expected * tangent / 6, 0.04 * expected * tangent / 6));
            CHECK(glm::length(focus.centre)
                  < 0.03 * focus.spot_rms.value);  // on the axis, but for the 64 rays' unevenness
        }
    }
}

TEST_CASE("blue light focuses behind red by the dispersion of all the glass") {
    const Train train = focused(wide_setup());
    const double glass = 2 * 50 + 52;
    const double expected =
        glass * (1 / index("N-BAK4", spectral_line::C) - 1 / index("N-BAK4", spectral_line::F));
    for (const Eye eye : both_eyes) {
        const double blue = real_focus(train, eye, 0).near_axis.value;
        const double red = real_focus(train, eye, 2).near_axis.value;
        CHECK(near(blue - red, expected, 1e-5));  // aberration of rays at 1/100 of the aperture
    }
}

TEST_CASE("the objective's own colour adds to the glass's, one to one") {
    Setup setup = wide_setup();
    const Train plain = focused(setup);
    the<Refractor>(setup).blue_shift = Millimetres{0.4};
    the<Refractor>(setup).red_shift = Millimetres{0.25};
    const Train coloured = focused(setup);
    const auto added = [&](std::size_t wavelength) {
        return real_focus(coloured, Eye::left, wavelength).near_axis.value
               - real_focus(plain, Eye::left, wavelength).near_axis.value;
    };
    CHECK(near(added(0), 0.4, 1e-5));
    CHECK(near(added(1), 0, 1e-12));
    CHECK(near(added(2), 0.25, 1e-5));
}

TEST_CASE("both eyes of a perfect head see the same focus") {
    for (const auto& chain : {std::vector<Part>{}, {bare_lens(-150, 0)}}) {
        const Train train = focused(wide_setup(chain));
        const RealFocus left = real_focus(train, Eye::left);
        const RealFocus right = real_focus(train, Eye::right);
        CHECK(near(left.near_axis.value, right.near_axis.value,
                   1e-7));  // rounding, over the small slope of these rays
        CHECK(near(left.marginal.value, right.marginal.value, 1e-9));
        CHECK(near(left.best, right.best, 1e-9));
        CHECK(near(left.spot_rms, right.spot_rms, 1e-9));
    }
}
