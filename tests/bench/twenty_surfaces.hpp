// A left eye's train of 20 surfaces as light meets them, the same for all tracers that are compared: ideal objective, two
// stops, right-angle prism, negative lens, stop, cube (straight through), rhomboid, block, three stops.
#pragma once

#include "parts/prisms.hpp"
#include "support/eye_paths.hpp"
#include "trace/sampling.hpp"

namespace bench {

using namespace beamfork;
using namespace test_paths;

constexpr double glass_index = 1.5688;

/// `tilt` degrees of the rhomboid's and the block's faces; with 0 all refracting faces are square to the axis.
inline EyePath twenty_surfaces(double tilt = 0) {
    const PrismGlass bare{"glass", FaceCoating::bare};
    const Prism diagonal = right_angle_prism(50, bare, "diagonal");
    const Prism cube = cube_transmitting(40, "glass");
    const Prism rhomboid = rhomboid_prism(40, 45, bare, "rhomboid");
    const Prism block = glass_block(40, 20, "glass", "block");
    PathMaker maker;
    maker.objective(900, Circle{60}).stop(translation(0, 0, 500), Circle{45});
    maker.stop(translation(0, 0, 600), Circle{40});
    Pose at = translation(0, 0, 640);
    const auto add = [&](const Prism& prism, double gap) {
        maker.prism(prism, at, glass_index);
        at = at * prism.prism_from_exit * translation(0, 0, gap);
    };
    add(diagonal, 10);
    maker.thin_lens(at, -400, 220).stop(at * translation(0, 0, 5), Circle{25});
    at = at * translation(0, 0, 15) * rotation_about_x(to_radians(Degrees{tilt}));
    add(cube, 8);
    add(rhomboid, 8);
    add(block, 10);
    maker.stop(at, Circle{24}).stop(at * translation(0, 0, 20), Circle{24});
    return maker.ending_at(at * translation(0, 0, 40));
}

/// Rays from field points over a disc of slopes, each over the whole objective.
inline RayBundle light(std::size_t fields, int rays) {
    Train train;  // only where the light starts is asked of it
    train.object_distance = std::numeric_limits<double>::infinity();
    train.objective_radius = 59.9;
    RayBundle bundle;
    const auto pupil = sunflower(rays);
    for (const glm::dvec2& field : sunflower(static_cast<int>(fields))) {
        const RayBundle more = bundle_into(train, 0.004 * field, pupil);
        for (std::size_t i = 0; i < more.size(); ++i)
            bundle.add(more.ray(i));
    }
    return bundle;
}

}  // namespace bench
