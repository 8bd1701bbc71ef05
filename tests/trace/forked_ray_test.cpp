// Rays to both eyes at once go as they go through each eye's path alone, which trace/bundle_test holds to the scalar
// reference.
#include "support/bundle_agreement.hpp"
#include "support/random_setups.hpp"
#include "trace/forked_ray.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

bool is_common(const RayCorner& corner, std::size_t dividing) {
    return !corner.surface || *corner.surface <= dividing;
}

// Of a ray through one eye's path alone, as far as it lies on that side of the dividing face.
std::vector<RayCorner> corners_of(const TracedRay& ray, std::size_t dividing, bool common) {
    std::vector<RayCorner> corners;
    for (const RayCorner& corner : ray.corners) {
        if (is_common(corner, dividing) == common) corners.push_back(corner);
    }
    return corners;
}

bool same_corners(const std::vector<RayCorner>& corners, const std::vector<RayCorner>& expected) {
    return std::equal(corners.begin(), corners.end(), expected.begin(), expected.end(),
                      same_corner);
}

}  // namespace

TEST_CASE("what both eyes share and each arm are those of a ray to that eye alone, whether it "
          "arrives or not") {
    Random random(64);
    int arrived = 0;
    int ended_before = 0;
    int ended_in_one_arm = 0;
    for (int i = 0; i < 40; ++i) {
        CAPTURE(i);
        const Setup setup = test_setups::random_setup(random);
        const auto train = build_train(setup, setup.chosen, Millimetres{random.between(0, 60)});
        if (!train) continue;
        const std::size_t dividing = dividing_surface(*train);
        const double slope = 0.5 / 180;
        for (const FieldSlope field : {FieldSlope{0, 0}, FieldSlope{slope, -slope}}) {
            const RayBundle bundle = bundle_into(*train, field, sunflower(60));
            const auto rays = ForkedTracer(*train, primary_wavelength).follow(bundle);
            const auto to_left = BundleTracer(train->paths[0], primary_wavelength).follow(bundle);
            const auto to_right = BundleTracer(train->paths[1], primary_wavelength).follow(bundle);
            REQUIRE(rays.size() == bundle.size());
            for (std::size_t r = 0; r < rays.size(); ++r) {
                CAPTURE(r);
                for (const Eye eye : both_eyes) {
                    const TracedRay& expected = (eye == Eye::left ? to_left : to_right)[r];
                    const TracedRay& arm = rays[r].arms[eye == Eye::left ? 0 : 1];
                    REQUIRE(arm.end.fate == expected.end.fate);
                    REQUIRE(arm.end.surface == expected.end.surface);
                    REQUIRE(same_corners(arm.corners, corners_of(expected, dividing, false)));
                    REQUIRE(glm::distance(arm.end.ray.direction, expected.end.ray.direction)
                            < turn_within);
                    if (eye == Eye::right) continue;
                    REQUIRE(same_corners(rays[r].common, corners_of(expected, dividing, true)));
                }
                const auto& [left, right] = rays[r].arms;
                arrived += !left.is_lost() && !right.is_lost() ? 1 : 0;
                ended_before += left.is_lost() && left.end.surface < dividing ? 1 : 0;
                ended_in_one_arm += left.is_lost() != right.is_lost() ? 1 : 0;
            }
        }
    }
    CHECK(arrived > 500);
    CHECK(ended_before > 100);
    CHECK(ended_in_one_arm > 20);
}

TEST_CASE("light is divided where one arm reflects what the other lets through") {
    Random random(65);
    for (int i = 0; i < 20; ++i) {
        const Setup setup = test_setups::random_setup(random);
        const auto train = build_train(setup, setup.chosen, Millimetres{20});
        if (!train) continue;
        const std::size_t dividing = dividing_surface(*train);
        const PlacedSurface& left = train->path(Eye::left).surfaces[dividing];
        const PlacedSurface& right = train->path(Eye::right).surfaces[dividing];
        CHECK(left.part == right.part);
        CHECK(role_of(setup.parts[left.part]) == Role::splitter);
        CHECK(left.kind != right.kind);
    }
}
