// An ideal corrector plate against the wave's own law: rays stand square to it.
#include <cmath>

#include "support/eye_paths.hpp"
#include "support/near.hpp"
#include "trace/ray.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

TEST_CASE("a plate that adds a r^4 turns a ray by 4 a r^3 outward and keeps the axis") {
    PlacedSurface plate = placed("plate", SurfaceKind::phase_plate, Pose{});
    const double a = 2e-10;
    plate.profile.terms = {a};
    for (const double r : {0.0, 10.0, 60.0, 100.0}) {
        for (const double slope : {0.0, 0.01}) {
            const Direction in{0, slope, std::sqrt(1 - slope * slope)};
            const auto out = interact(plate, {{0, r, 0}, in, 7}, primary_wavelength, 0);
            REQUIRE(out);
            CHECK(near(out->path - 7, a * std::pow(r, 4), 1e-15));
            // The wave's path along the plate grows by sin(angle) per mm; the plate adds its own slope, d(a r^4)/dr.
            CHECK(near(out->direction.y - slope, 4 * a * std::pow(r, 3), 1e-15));
            CHECK(near(glm::length(out->direction), 1, 1e-15));
        }
    }
}

TEST_CASE("a plate's turn is the slope of its path, whatever its terms") {
    const PhaseProfile profile{{1e-9, -2e-13, 3e-18, 1e-22, -4e-27}};
    for (const double r : {5.0, 40.0, 90.0}) {
        const double step = 1e-3;
        const auto path = [&](double at) { return profile.path(at * at); };
        const double slope = (path(r + step) - path(r - step)) / (2 * step);
        CHECK(near(profile.turn_over_radius(r * r) * r, slope, 1e-7 * std::abs(slope) + 1e-13));
    }
}
