#include <cmath>

#include "glass/coating.hpp"
#include "reference/coatings.hpp"
#include "support/near.hpp"
#include "support/random.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE("a bare face reflects Fresnel's share at normal incidence, from either side") {
    for (const auto& row : reference::normal_reflectances) {
        CAPTURE(row.index);
        CHECK(near(fresnel_reflectance(1, row.index, Radians{0}), row.reflectance, 1e-6));
        CHECK(near(fresnel_reflectance(row.index, 1, Radians{0}), row.reflectance, 1e-6));
    }
}

TEST_CASE(
    "at Brewster's angle only light that swings across is reflected, beyond the critical one all") {
    // tan(Brewster) = n; there the mean is half of Fresnel's first equation, sin^2(i - r) / sin^2(i + r), and
    // i + r is a right angle.
    const double n = 1.5168;
    const double brewster = std::atan(n);
    const double refracted = std::numbers::pi / 2 - brewster;
    const double across = std::pow(std::sin(brewster - refracted), 2);
    CHECK(near(fresnel_reflectance(1, n, Radians{brewster}), across / 2, 1e-12));
    CHECK(fresnel_reflectance(n, 1, Radians{std::asin(1 / n) + 1e-6}) == 1);
    CHECK(fresnel_reflectance(n, 1, Radians{std::asin(1 / n) - 1e-3}) < 1);
}

TEST_CASE("a quarter-wave layer of the index sqrt(n0 n2) reflects nothing") {
    for (const double n : {1.4, 1.5168, 1.78})
        CHECK(near(quarter_wave_reflectance(1, std::sqrt(n), n), 0, 1e-30));
    // Magnesium fluoride on crown glass: 1.2 to 1.5 % (common practice, no source).
    const double single = face_reflectance(AntiReflection::single_layer, 1, 1.5168, Radians{0});
    CHECK(single > 0.012);
    CHECK(single < 0.015);
}

TEST_CASE("more layers reflect less, and a cemented joint nothing") {
    Random random(7);
    for (int i = 0; i < 50; ++i) {
        const double n = random.between(1.45, 1.7);
        const auto share = [&](AntiReflection coating) {
            return face_reflectance(coating, 1, n, Radians{0});
        };
        CHECK(share(AntiReflection::single_layer) < share(AntiReflection::uncoated));
        CHECK(face_reflectance(AntiReflection::uncoated, n, n, Radians{0.3}) == 0);
    }
    CHECK(anti_reflection_words().size() == 3);
    CHECK(mirror_coating_words().size() == 4);
}

TEST_CASE("better mirrors cost more and throw back more") {
    CHECK(mirror_reflectance(MirrorCoating::aluminium)
          < mirror_reflectance(MirrorCoating::enhanced_aluminium));
    CHECK(mirror_reflectance(MirrorCoating::enhanced_aluminium)
          < mirror_reflectance(MirrorCoating::silver));
    CHECK(mirror_reflectance(MirrorCoating::silver)
          < mirror_reflectance(MirrorCoating::dielectric));
}
