#include <algorithm>
#include <cmath>

#include "parts/convex_block.hpp"
#include "parts/prisms.hpp"
#include "parts/roof_prisms.hpp"
#include "reference/prism_paths.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

const PrismGlass glass{"N-BAK4", FaceCoating::bare};

// The axis followed by reflection alone: its length, and its angle of incidence on each reflecting face.
struct Axis {
    double length = 0;
    std::vector<double> incidence_deg;
};
Axis follow(const Prism& prism) {
    Axis axis;
    Direction along{0, 0, 1};
    Point at{0.0};
    for (const Surface& surface : prism.surfaces) {
        const Pose& pose = surface.part_from_surface;
        const double step = glm::dot(pose.origin - at, along);
        CHECK(glm::distance(at + step * along, pose.origin) < 1e-9);
        CHECK(glm::dot(along, pose.z()) > 0);  // z along the incoming light
        axis.length += step;
        at = pose.origin;
        if (surface.kind != SurfaceKind::total_reflection) continue;
        axis.incidence_deg.push_back(
            to_degrees(Radians{std::acos(glm::dot(along, pose.z()))}).value);
        along = mirrored(along, pose.z());
    }
    CHECK(glm::distance(along, prism.prism_from_exit.z()) < 1e-12);
    CHECK(glm::distance(at, prism.prism_from_exit.origin) < 1e-9);
    return axis;
}

bool is_closed(const GlassBody& body) {
    std::vector<std::pair<int, int>> edges;
    for (const auto& face : body.faces) {
        for (std::size_t i = 0; i < face.size(); ++i)
            edges.emplace_back(face[i], face[(i + 1) % face.size()]);
    }
    return std::ranges::all_of(edges, [&](const auto& edge) {
        return std::ranges::count(edges, std::pair{edge.second, edge.first}) == 1;
    });
}

}  // namespace

TEST_CASE("the roof prism of 90 degrees is sqrt(3) of its width long and is met at 60 degrees") {
    const Axis axis = follow(roof_prism_90(25, glass, "p"));
    CHECK(near(axis.length / 25, reference::roof_90_path, reference::roof_path_digits));
    REQUIRE(axis.incidence_deg.size() == 2);
    for (const double incidence : axis.incidence_deg)
        CHECK(near(incidence, reference::roof_90_incidence_deg, 1e-6));
}

TEST_CASE(
    "the roof prism of 45 degrees is 3.040 of its width long and is met at 45, 49.21 twice and "
    "45 degrees") {
    const Axis axis = follow(roof_prism_45(25, glass, "p"));
    CHECK(near(axis.length / 25, reference::roof_45_path, 5e-4));  // last printed digit
    REQUIRE(axis.incidence_deg.size() == 4);
    CHECK(near(axis.incidence_deg[0], 45, 1e-6));
    CHECK(near(axis.incidence_deg[1], reference::roof_45_incidence_deg, 1e-4));
    CHECK(near(axis.incidence_deg[2], reference::roof_45_incidence_deg, 1e-4));
    CHECK(near(axis.incidence_deg[3], 45, 1e-6));
}

TEST_CASE("both are closed blocks of glass") {
    CHECK(is_closed(roof_prism_90(25, glass, "p").body()));
    CHECK(is_closed(roof_prism_45(25, glass, "p").body()));
}

TEST_CASE("planes that enclose a cube give its eight corners and six square faces") {
    std::vector<HalfSpace> planes;
    for (int i = 0; i < 3; ++i) {
        for (const double side : {-1.0, 1.0}) {
            HalfSpace plane;
            plane.on[i] = 2 * side;
            plane.outward = {0, 0, 0};
            plane.outward[i] = side;
            planes.push_back(plane);
        }
    }
    const Block cube = block_within(planes);
    CHECK(cube.body.corners.size() == 8);
    CHECK(cube.body.faces.size() == 6);
    for (const auto& face : cube.faces) {
        REQUIRE(face.size() == 4);
        CHECK(near(glm::length(glm::cross(face[1] - face[0], face[2] - face[1])), 16, 1e-9));
    }
    CHECK(is_closed(cube.body));
}
