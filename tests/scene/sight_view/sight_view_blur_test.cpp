#include <array>
#include <cmath>
#include <numeric>

#include "scene/sight_view/sight_view_blur.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <boost/math/special_functions/bessel.hpp>

using namespace beamfork;

namespace {

double j(int order, double x) { return boost::math::cyl_bessel_j(order, x); }

// Share of the light within x: Lord Rayleigh, Phil. Mag. 11, 214 (1881), as in Born & Wolf, sec. 8.5.2, Eq. 18.
double encircled(double x) { return 1 - j(0, x) * j(0, x) - j(1, x) * j(1, x); }

}  // namespace

TEST_CASE("diffraction of a round aperture has its published rings") {
    CHECK(near(diffraction_light(0, 0), 1, 1e-12));
    CHECK(near(diffraction_light(first_dark_x, 0), 0, 1e-12));
    // Born & Wolf, Principles of Optics, 7th ed., Table 8.2 (from memory): bright rings at 1.635 pi and
    // 2.679 pi with 0.0175 and 0.0042 of the middle; last printed digit.
    CHECK(near(diffraction_light(1.635 * std::acos(-1.0), 0), 0.0175, 5e-5));
    CHECK(near(diffraction_light(2.679 * std::acos(-1.0), 0), 0.0042, 5e-5));
    for (const double x : {0.5, 2.0, 7.0}) {
        const double clear = 2 * j(1, x) / x;
        CHECK(near(diffraction_light(x, 0), clear * clear, 1e-12));
        const double e = 0.35;
        const double ring = (clear - e * e * 2 * j(1, e * x) / (e * x)) / (1 - e * e);
        CHECK(near(diffraction_light(x, e), ring * ring, 1e-12));
    }
}

TEST_CASE("a star in focus puts the published share of its light within the first dark ring") {
    const double ring = 10;
    const BlurKernel kernel = blur_kernel({{}, ring, 0});
    double inside = 0;
    double all = 0;
    for (int y = 0; y < kernel.side(); ++y) {
        for (int x = 0; x < kernel.side(); ++x) {
            const double share = kernel.share[static_cast<std::size_t>(y * kernel.side() + x)];
            all += share;
            if (std::hypot(x - kernel.reach, y - kernel.reach) < ring) inside += share;
        }
    }
    CHECK(near(all, 1, 1e-5));  // float shares
    // 83.8 % of all light, of which the square kernel keeps about what lies within four dark rings and the
    // corners (0.957 to 0.971): half of that range, and the rim's pixels, where there is no light.
    CHECK(near(inside, encircled(first_dark_x) / 0.964, 0.01));
    // Light falls to nothing at the dark ring and comes back behind it.
    const auto along = [&](int pixels) {
        return static_cast<double>(kernel.share[static_cast<std::size_t>(
            kernel.reach * kernel.side() + kernel.reach + pixels)]);
    };
    CHECK(along(10) < 1e-5 * along(0));
    CHECK(along(13) > 0.01 * along(0));
}

TEST_CASE("rays spread a point to their own places, right and up as they are") {
    const std::array<glm::dvec2, 2> spots{{{2, 0}, {0, 3}}};
    const BlurKernel kernel = blur_kernel({spots, 0, 0});
    CHECK(kernel.reach == 3);
    const auto at = [&](int right, int up) {
        return kernel.share[static_cast<std::size_t>((kernel.reach - up) * kernel.side()
                                                     + kernel.reach + right)];
    };
    CHECK(at(2, 0) == 0.5F);
    CHECK(at(0, 3) == 0.5F);
    CHECK(at(0, 0) == 0.0F);
    // Half-way between pixels a ray counts for both.
    const std::array<glm::dvec2, 1> between{{{0.5, 0}}};
    const BlurKernel shared = blur_kernel({between, 0, 0});
    CHECK(shared.share[static_cast<std::size_t>(shared.side() + 1)] == 0.5F);
}

TEST_CASE("every kernel keeps all the light") {
    const std::array<glm::dvec2, 3> spots{{{2.3, -1.2}, {-4.9, 0.1}, {0.4, 3.3}}};
    for (const double ring : {0.0, 0.7, 3.0}) {
        const BlurKernel kernel = blur_kernel({spots, ring, 0.3});
        const double all = std::accumulate(kernel.share.begin(), kernel.share.end(), 0.0);
        CHECK(near(all, 1, 1e-4));  // float shares
        CHECK(kernel.reach == reach_of({spots, ring, 0.3}));
    }
}
