// Tunnel lengths of prisms: the glass that a traced axial ray passes.
#include <cmath>

#include "parts/prisms.hpp"
#include "reference/prism_paths.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double width = 25;
constexpr double glass_index = 1.5688;
const PrismGlass glass{"N-BAK4", FaceCoating::bare};

// Glass passed by the axial ray: its optical path less the air, over its index.
double glass_length(const Prism& prism) {
    PathMaker maker;
    const EyePath path =
        maker.prism(prism, translation(0, 0, 10), glass_index)
            .ending_at(translation(0, 0, 10) * prism.prism_from_exit * translation(0, 0, 20));
    const RayEnd end = trace_ray(path, {{0, 0, 0}, {0, 0, 1}, 0}, primary_wavelength);
    CHECK(end.fate == RayFate::reached);
    // It leaves in the middle of the exit face, along its axis.
    CHECK(glm::distance(end.ray.origin, path.world_from_field_stop.origin) < 1e-9);
    CHECK(glm::distance(end.ray.direction, path.world_from_field_stop.z()) < 1e-12);
    return (end.ray.path - 30) / glass_index;
}

}  // namespace

TEST_CASE("the axial ray passes as much glass as the handbook's tunnel is long") {
    CHECK(near(glass_length(right_angle_prism(width, glass, "p")),
               width * reference::right_angle_path, 1e-9));
    CHECK(
        near(glass_length(cube_transmitting(width, "N-BAK4")), width * reference::cube_path, 1e-9));
    CHECK(near(glass_length(cube_reflecting(width, "N-BAK4")), width * reference::cube_path, 1e-9));
    for (const auto& row : reference::rhomboid_paths) {
        CAPTURE(row.offset);
        CHECK(near(glass_length(rhomboid_prism(width, row.offset * width, glass, "r")),
                   width * row.path, 1e-9));
    }
    CHECK(near(glass_length(glass_block(width, 37, "N-BAK4", "b")), 37, 1e-9));
}

TEST_CASE(
    "any ray that a prism passes turns exactly as at plane mirrors: glass adds no deviation") {
    Random random(54);
    const auto deviation = [&](const Prism& prism, const Direction& along) {
        PathMaker maker;
        const EyePath path = maker.prism(prism, Pose{}, glass_index)
                                 .ending_at(prism.prism_from_exit * translation(0, 0, 5));
        const RayEnd end = trace_ray(path, {Point{0, 0, 0} - along, along, 0}, primary_wavelength);
        CHECK(end.fate == RayFate::reached);
        return end.ray.direction;
    };
    for (int i = 0; i < 100; ++i) {
        const Direction along = random_direction_near_z(random, 0.05);
        const Direction folded = deviation(right_angle_prism(width, glass, "p"), along);
        CHECK(glm::distance(folded, {along.x, along.z, along.y})
              < 1e-12);  // y and z change places at 45 degrees
        CHECK(glm::distance(deviation(rhomboid_prism(width, 30, glass, "r"), along), along)
              < 1e-12);
        CHECK(glm::distance(deviation(cube_transmitting(width, "N-BAK4"), along), along) < 1e-12);
    }
}
