// The wavefront's measures against a plate followed with 40 digits in another language, and against closed forms.
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "reference/plane_plate.hpp"
#include "reference/plate_wavefront.hpp"
#include "study/image/aberrations.hpp"
#include "study/image/point_spread.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double lens_focal_length = 400;
constexpr double green_mm = 546.0740e-6;

// A telescope of that f-number with a plate in its cone, front towards the light as posed.
struct PlateSetting {
    Train train;
    EyePath path;
};
PlateSetting behind_objective(double f_number,
                              double thickness,
                              double index,
                              const Pose& front = translation(0, 0, 100)) {
    PlateSetting setting;
    setting.train.objective_focal_length = lens_focal_length;
    setting.train.objective_radius = lens_focal_length / (2 * f_number);
    setting.train.object_distance = std::numeric_limits<double>::infinity();
    PathMaker maker;
    setting.path = maker.objective(lens_focal_length)
                       .face(front, index)
                       .face(front * translation(0, 0, thickness), 1)
                       .ending_at(translation(0, 0, lens_focal_length));
    return setting;
}

Wavefront wavefront_of(const PlateSetting& setting, int rays, FieldSlope field = {0, 0}) {
    return trace_wavefront(setting.train, setting.path, field, sunflower(rays), primary_wavelength);
}

}  // namespace

TEST_CASE("the path through a plate is that of an independent trace with 40 digits") {
    for (const auto& row : reference::plate_wavefronts) {
        CAPTURE(row.thickness);
        CAPTURE(row.index);
        CAPTURE(row.f_number);
        const auto setting = behind_objective(row.f_number, row.thickness, row.index);
        const Point paraxial{0, 0, row.thickness * (1 - 1 / row.index)};
        const std::array<glm::dvec2, 2> rays{glm::dvec2{0, 0}, glm::dvec2{0, 1 - 1e-12}};
        const Wavefront two =
            trace_wavefront(setting.train, setting.path, {0, 0}, rays, primary_wavelength);
        REQUIRE(two.rays.size() == 2);
        const double rim = path_to(two.rays[1], paraxial) - path_to(two.rays[0], paraxial);
        // Ours is in doubles on paths of 500 mm: 1e-13 mm, 2e-7 waves, over a few additions.
        CHECK(near(rim / green_mm, row.rim_waves, 2e-6));
    }
}

TEST_CASE("rms error and peak of a plate's wavefront are those of an independent trace") {
    for (const auto& row : reference::plate_wavefronts) {
        CAPTURE(row.thickness);
        CAPTURE(row.index);
        CAPTURE(row.f_number);
        const Wavefront wavefront =
            wavefront_of(behind_objective(row.f_number, row.thickness, row.index), 4000);
        const std::array alone{WeightedWavefront{&wavefront, 1}};
        const Point centre = best_sphere_centre(alone);
        // 4000 rays in place of the exact integral: an even spiral's means are good to about one part in a thousand.
        CHECK(near(rms_waves(wavefront, centre), row.rms_waves, 2e-3 * row.rms_waves));
        const Millimetres depth{2 * green_mm * row.f_number * row.f_number};
        // The peak falls from one by (2 pi rms)^2 to first order: one part in a thousand of rms is two of that.
        CHECK(near(strehl(alone, sharpest_focus(alone, depth)), row.strehl,
                   4e-3 * (1 - row.strehl) + 1e-6));
        // Few rays, as while a slider moves, tell nearly the same.
        const Wavefront few =
            wavefront_of(behind_objective(row.f_number, row.thickness, row.index), 96);
        const std::array coarse{WeightedWavefront{&few, 1}};
        CHECK(near(strehl(coarse, sharpest_focus(coarse, depth)), row.strehl,
                   0.1 * (1 - row.strehl) + 1e-6));
    }
}

TEST_CASE("spherical aberration of a plate is the handbook's third-order form") {
    for (const auto& row : reference::plate_wavefronts) {
        CAPTURE(row.thickness);
        CAPTURE(row.index);
        CAPTURE(row.f_number);
        const Wavefront wavefront =
            wavefront_of(behind_objective(row.f_number, row.thickness, row.index), 400);
        const double u = 1 / (2 * row.f_number);
        const double n = row.index;
        const Point paraxial{0, 0, row.thickness * (1 - 1 / n)};
        // W. J. Smith, Modern Optical Engineering, 4th ed., sec. 7.8: t u^4 (n^2 - 1) / (8 n^3).
        const double closed =
            row.thickness * std::pow(u, 4) * (n * n - 1) / (8 * n * n * n) / green_mm;
        // The sixth-order term, u^2 / 2 of it, is fitted apart; what remains is of order u^4.
        CHECK(near(aberrations(wavefront, paraxial).spherical, closed,
                   std::pow(u, 4) * closed + 1e-6));
    }
}

TEST_CASE("a tilted plate adds the handbook's astigmatism and coma") {
    constexpr double thickness = 100;
    constexpr double index = 1.5168;
    constexpr double f_number = 10;
    const double u = 1 / (2 * f_number);
    for (const double tilt : {0.5, 1.0, 2.0}) {
        CAPTURE(tilt);
        const double up = to_radians(Degrees{tilt}).value;
        const Pose front = translation(0, 0, 100) * rotation_about_x(to_radians(Degrees{tilt}));
        const Wavefront wavefront =
            wavefront_of(behind_objective(f_number, thickness, index, front), 400);
        const std::array alone{WeightedWavefront{&wavefront, 1}};
        const Aberrations found = aberrations(wavefront, best_sphere_centre(alone));
        // Smith, sec. 7.8: focus difference t up^2 (n^2 - 1) / n^3, of which u^2 / 2 is the wavefront's; sagittal coma
        // t u^2 up (n^2 - 1) / (2 n^3), u times that of the wavefront. Next orders: up^2 and u^2, below half a per cent.
        const double n3 = (index * index - 1) / (index * index * index) / green_mm;
        const double astigmatism = thickness * up * up * u * u * n3 / 2;
        const double coma = thickness * u * u * u * up * n3 / 2;
        CHECK(near(found.astigmatism, astigmatism, 0.005 * astigmatism));
        CHECK(near(found.coma, coma, 0.005 * coma));
    }
    // At 2 degrees the handbook's exact focus difference is printed: reference row 100, 1.5688, 2.
    const auto& exact = reference::tilted_plates[4];
    const Pose front = translation(0, 0, 100) * rotation_about_x(to_radians(Degrees{exact.tilt}));
    const Wavefront wavefront =
        wavefront_of(behind_objective(20, exact.thickness, exact.index, front), 400);
    const double waves = aberrations(wavefront, Point{0, 0, 36}).astigmatism;
    CHECK(near(2 * waves * green_mm / (1.0 / 1600), -exact.astigmatism,
               0.003 * 0.046));  // u^2 at f/20
}

TEST_CASE(
    "an ideal lens makes the perfect image: peak 1, and 83.8 % of the light in the Airy disc") {
    const auto setting = behind_objective(8, 0.001, 1.0);
    for (const int rays : {96, 256}) {
        CAPTURE(rays);
        const Wavefront wavefront = wavefront_of(setting, rays);
        const std::array alone{WeightedWavefront{&wavefront, 1}};
        const Point focus = sharpest_focus(alone, Millimetres{0.07});
        CHECK(near(strehl(alone, focus), 1, 1e-9));
        CHECK(near(focus.z, 0, 1e-6));
        CHECK(near(focal_ratio_of(wavefront), 8, 1e-9));
        const double unit = green_mm * 8;
        const PointSpread spread = point_spread(alone, focus, 8, 29, Millimetres{0.28 * unit});
        // 1 - J0^2 - J1^2 at the first dark ring (W. J. Smith, sec. 9.10: 84 %; the digits from mpmath). The grid's
        // cells and the rays' spacing cost about a per cent.
        CHECK(near(energy_within(spread, Millimetres{1.21967 * unit}), 0.837785, 0.015));
        CHECK(near(energy_within(spread, Millimetres{0.534832 * unit}), 0.5, 0.02));
        CHECK(near(energy_within(spread, Millimetres{4 * unit}), 0.951312, 0.02));
        CHECK(near(spread.brightness[14 * 29 + 14], 1, 1e-9));
    }
}

TEST_CASE("defocus by the depth of focus leaves 80 % of the peak") {
    const auto setting = behind_objective(10, 0.001, 1.0);
    const Wavefront wavefront = wavefront_of(setting, 1000);
    const std::array alone{WeightedWavefront{&wavefront, 1}};
    // A quarter wave at the rim: (sin(pi/4) / (pi/4))^2 = 0.8106 for pure defocus; u^2 corrections are 1e-3.
    const double depth = 2 * green_mm * 100;
    const double quarter = std::pow(std::sin(std::numbers::pi / 4) / (std::numbers::pi / 4), 2);
    CHECK(near(strehl(alone, Point{0, 0, depth}), quarter, 2e-3));
    CHECK(near(strehl(alone, Point{0, 0, -depth}), quarter, 2e-3));
}
