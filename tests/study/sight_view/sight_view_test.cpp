#include <cmath>

#include "parts/focuser.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "study/findings/report.hpp"
#include "study/sight_view/sight_view.hpp"
#include "support/near.hpp"
#include "support/setups.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_setups;

namespace {

struct Seen {
    Setup setup;
    Report report;
};

Seen view_of(const Setup& setup) {
    auto report = make_report(setup, setup.chosen, ClippingEffort{64});
    REQUIRE(report.has_value());
    return {setup, *std::move(report)};
}

double farthest(const std::vector<glm::dvec2>& spots) {
    double far = 0;
    for (const glm::dvec2& spot : spots)
        far = std::max(far, glm::length(spot));
    return far;
}

// The outermost of 120 sunflower points, as a share of the aperture's radius.
const double outermost = std::sqrt(119.5 / 120);

// A cone that obeys the sine condition: its rim leaves under sin U = 1 / 2N.
double cone_slope(double focal_ratio) { return std::tan(std::asin(outermost / (2 * focal_ratio))); }

}  // namespace

TEST_CASE("the bare telescope shows the sky upside down at F / f") {
    const Seen at = view_of(wide_setup());  // 100 mm, F 700, eyepiece 25
    const EyeSight sight = one_eye_sight(at.setup, at.report);
    CHECK(near(sight.magnification(), 28, 1e-6));  // slopes of 1e-4 are linear to 1e-8
    const glm::dvec2 stop = stop_of_sky(sight, {0.001, 0.002});
    CHECK(near(stop.x, -0.7, 1e-6));
    CHECK(near(stop.y, -1.4, 1e-6));
    // 5 log10(100 / 6) above the naked eye's 6.0: light grasp, worked by hand.
    // ... and what lenses keep back, in magnitudes.
    const double passes = at.report.brightness.without_head;
    CHECK(passes < 1);
    CHECK(near(sight.limiting, 12.109 + 2.5 * std::log10(passes), 5e-4));  // last digit
    // Exit pupil 100 / 28 of a 6 mm eye, squared.
    CHECK(near(sight.surface, 0.35431 * passes, 1e-5));
}

TEST_CASE("through the head the traced magnification agrees with the paraxial one, with half the "
          "light less what faces cost") {
    const Seen at = view_of(wide_setup());
    for (const Eye eye : both_eyes) {
        const EyeSight sight = eye_sight(at.setup, at.report, eye);
        CHECK(near(sight.magnification() / at.report.magnification.magnification, 1, 1e-4));
        CHECK(near(glm::length(sight.axis_image), 0, 1e-9));  // perfect prisms: rounding alone
        // Half the light is 2.5 log10 2 = 0.7526 magnitudes less; the head's faces cost the rest.
        const double faces = 2 * sight.light / at.report.brightness.without_head;
        CHECK(faces < 1);
        CHECK(faces > 0.7);
        CHECK(near(one_eye_sight(at.setup, at.report).limiting - sight.limiting,
                   0.7526 - 2.5 * std::log10(faces), 5e-5));
    }
}

TEST_CASE("out of focus a star is a disc as wide as the cone is where the eye looks") {
    Setup setup = wide_setup();
    const Seen sharp = view_of(setup);
    the<Focuser>(setup).held_at = Millimetres{sharp.report.budget.wanted_drawtube.value + 5};
    const Seen blurred = view_of(setup);
    const EyeSight sight = eye_sight(blurred.setup, blurred.report, Eye::left);
    // 5 mm of air off focus. The head's 150 mm of glass have a spherical aberration of their own at f/7, to
    // the side t (n^2 - 1) u^3 / 2 n^3 = 0.010 mm (plate in a converging beam, third order).
    CHECK(near(farthest(sight.nodes[0][primary_wavelength]), 5 * cone_slope(7), 0.015));
    CHECK(farthest(eye_sight(sharp.setup, sharp.report, Eye::left).nodes[0][primary_wavelength])
          < 0.015);
}

TEST_CASE("a telescope that focuses blue farther out gives blue its disc, green none") {
    Setup setup = wide_setup();
    the<Refractor>(setup).blue_shift = {1};
    const Seen at = view_of(setup);
    const EyeSight sight = one_eye_sight(at.setup, at.report);
    // The plane lies 1 mm before the blue image, whose cone is 701 mm long.
    CHECK(near(farthest(sight.nodes[0][0]), cone_slope(7.01), 1e-4));
    CHECK(near(farthest(sight.nodes[0][primary_wavelength]), 0, 1e-9));
}

TEST_CASE(
    "places on the field stop and on the sky belong to each other, and so do apparent angles") {
    const Seen at = view_of(wide_setup());
    const EyeSight sight = eye_sight(at.setup, at.report, Eye::right);
    for (const glm::dvec2 stop : {glm::dvec2{0, 0}, {3, -4}, {-10, 2}}) {
        CHECK(near(glm::distance(stop_of_sky(sight, sky_of_stop(sight, stop)), stop), 0, 1e-9));
        CHECK(near(glm::distance(stop_of_apparent(sight, apparent_of_stop(sight, stop)), stop), 0,
                   1e-9));
    }
    // The middle at p / f, the edge under half the stated apparent field.
    CHECK(near(apparent_of_stop(sight, {0.01, 0}).x, 0.01 / 25, 1e-9));
    const double edge = apparent_of_stop(sight, {0, sight.stop_radius.value}).y;
    CHECK(near(to_degrees(Radians{edge}).value, 25, 1e-9));
}

TEST_CASE("a lens made for the glass behind it clears what each eye sees as well") {
    Setup setup = wide_setup({bare_lens(-200, 0)});
    the<Refractor>(setup).focal_length = {500};
    const Seen plain = view_of(setup);
    double glass = 0;
    for (const LightPath& path : plain.report.train.light_paths)
        glass += path.glass;
    the<Shifter>(setup).corrected_glass = Millimetres{glass};
    const Seen made = view_of(setup);
    for (const std::size_t colour : {std::size_t{0}, wavelength_count - 1}) {
        const double before =
            farthest(eye_sight(plain.setup, plain.report, Eye::left).nodes[0][colour]);
        const double after =
            farthest(eye_sight(made.setup, made.report, Eye::left).nodes[0][colour]);
        // Axial colour t (1/nC - 1/nF), half of it at the rim's slope, is 20 times what higher orders leave.
        CHECK(after < 0.1 * before);
    }
}
