// Rays through real roofs: the whole round beam passes, whichever face each ray meets first.
#include "parts/prisms.hpp"
#include "parts/roof_prisms.hpp"
#include "support/eye_paths.hpp"
#include "support/near.hpp"
#include "trace/sampling.hpp"

#include <doctest/doctest.h>

using namespace beamfork;
using namespace test_paths;

namespace {

constexpr double roof_width = 25;
const PrismGlass roof_glass{"N-BAK4", FaceCoating::bare};

EyePath path_through(const Prism& prism) {
    EyePath path;
    path.object_distance = std::numeric_limits<double>::infinity();
    double index = 1;
    const auto add = [&](const Surface& surface) {
        PlacedSurface one =
            placed(surface.name, surface.kind, surface.part_from_surface, surface.aperture);
        one.is_roof = surface.is_roof;
        one.index_before = at_all_wavelengths(index);
        if (surface.kind == SurfaceKind::refraction)
            index = surface.medium_after.empty() ? 1 : 1.5688;
        one.index_after = at_all_wavelengths(index);
        path.surfaces.push_back(std::move(one));
    };
    for (const Surface& surface : prism.surfaces)
        add(surface);
    Surface end{"end", SurfaceKind::stop, prism.prism_from_exit * translation(0, 0, 20)};
    add(end);
    path.world_from_field_stop = end.part_from_surface;
    return path;
}

void check_beam(const Prism& prism) {
    const EyePath path = path_through(prism);
    const RayEnd axis = trace_ray(path, {{0, 0, -5}, {0, 0, 1}, 0}, primary_wavelength);
    for (const glm::dvec2& at : sunflower(400)) {
        const Ray start{{at * (roof_width / 2 * 0.9999), -5}, {0, 0, 1}, 0};
        const auto [end, corners] = trace_with_corners(path, start, primary_wavelength);
        REQUIRE(end.fate == RayFate::reached);
        CHECK(near(end.ray.path, axis.ray.path, 1e-9));  // a plane wave stays plane
        CHECK(glm::distance(end.ray.direction, path.world_from_field_stop.z()) < 1e-12);
        // Left and right, up and down change places.
        const Point seen = path.world_from_field_stop.point_in(end.ray.origin);
        CHECK(near(seen.x, -start.origin.x, 1e-9));
        CHECK(near(seen.y, -start.origin.y, 1e-9));
        double length = 0;
        for (std::size_t i = 1; i < corners.size(); ++i)
            length += glm::distance(corners[i].at, corners[i - 1].at);
        CHECK(corners.size() == path.surfaces.size() + 1);  // each surface once, in whatever order
        const double air = 5 + 20;
        CHECK(near(air + 1.5688 * (length - air), end.ray.path, 1e-9));  // no step was negative
    }
}

}  // namespace

TEST_CASE("a round beam as wide as the prism passes both roof prisms whole and comes out turned") {
    check_beam(roof_prism_90(roof_width, roof_glass, "p"));
    check_beam(roof_prism_45(roof_width, roof_glass, "p"));
}

TEST_CASE("a prism a hundredth narrower clips the same beam") {
    for (const Prism& prism : {roof_prism_90(0.99 * roof_width, roof_glass, "p"),
                               roof_prism_45(0.99 * roof_width, roof_glass, "p")}) {
        const EyePath path = path_through(prism);
        int clipped = 0;
        for (const glm::dvec2& at : rim(360)) {
            const RayEnd end =
                trace_ray(path, {{at * (roof_width / 2), -5}, {0, 0, 1}, 0}, primary_wavelength);
            clipped += end.fate == RayFate::reached ? 0 : 1;
        }
        CHECK(clipped > 0);
    }
}
