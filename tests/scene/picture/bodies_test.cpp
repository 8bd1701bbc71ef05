#include <array>
#include <cmath>
#include <map>
#include <numbers>

#include "parts/prisms.hpp"
#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

using PlaceKey = std::array<long, 3>;

// Corners are doubled at sharp edges: places tell them apart, to a micrometre.
PlaceKey key_of(const glm::vec3& at) {
    const auto step = [](float x) { return std::lround(static_cast<double>(x) * 1000); };
    return {step(at.x), step(at.y), step(at.z)};
}

// A closed surface runs along each of its edges once in either direction.
bool is_closed(const Mesh& mesh) {
    std::map<std::pair<PlaceKey, PlaceKey>, int> runs;
    for (std::size_t i = 0; i < mesh.indices.size(); i += 3) {
        for (std::size_t k = 0; k < 3; ++k) {
            const PlaceKey a = key_of(mesh.vertices[mesh.indices[i + k]].position);
            const PlaceKey b = key_of(mesh.vertices[mesh.indices[i + (k + 1) % 3]].position);
            if (a == b) continue;
            a < b ? ++runs[{a, b}] : --runs[{b, a}];
        }
    }
    return std::all_of(runs.begin(), runs.end(), [](const auto& run) { return run.second == 0; });
}

// By the divergence theorem, a sum of tetrahedra; positive when triangles turn outward.
double volume(const Mesh& mesh) {
    double sum = 0;
    const glm::dvec3 origin(mesh.vertices.front().position);  // near by, for rounding
    for (std::size_t i = 0; i < mesh.indices.size(); i += 3) {
        const auto corner = [&](std::size_t k) {
            return glm::dvec3(mesh.vertices[mesh.indices[i + k]].position) - origin;
        };
        sum += glm::dot(corner(0), glm::cross(corner(1), corner(2))) / 6;
    }
    return sum;
}

bool normals_agree_with_triangles(const Mesh& mesh) {
    for (std::size_t i = 0; i < mesh.indices.size(); i += 3) {
        const auto vertex = [&](std::size_t k) { return mesh.vertices[mesh.indices[i + k]]; };
        const glm::vec3 turn = glm::cross(vertex(1).position - vertex(0).position,
                                          vertex(2).position - vertex(0).position);
        for (std::size_t k = 0; k < 3; ++k) {
            if (std::abs(glm::length(vertex(k).normal) - 1) > 1e-3F) return false;
            if (glm::dot(turn, vertex(k).normal) < 0) return false;
        }
    }
    return true;
}

Pose somewhere() {
    return translation(3, -4, 5) * rotation_about_x(to_radians(Degrees{33}))
           * rotation_about_z(to_radians(Degrees{71}));
}

// A circle drawn with n corners has n/2 sin(2 pi/n) r^2 of area.
double polygon_area(double radius, int corners) {
    return 0.5 * corners * std::sin(2 * std::numbers::pi / corners) * radius * radius;
}

}  // namespace

TEST_CASE("every body of the picture is closed, and its normals point outward") {
    for (const Setup& setup : {short_setup(), cured_setup(), clipping_setup()}) {
        const Frame frame = build_frame(setup, report_of(setup));
        std::size_t glass = 0;
        for (const Mesh& mesh : frame.meshes) {
            CAPTURE(mesh.part);
            CAPTURE(static_cast<int>(mesh.finish));
            CHECK(is_closed(mesh));
            CHECK(volume(mesh) > 0);
            CHECK(normals_agree_with_triangles(mesh));
            if (mesh.finish == Finish::glass) ++glass;
        }
        CHECK(glass >= 6);  // cube, two arm prisms, compensator, objective, eye lenses
    }
}

TEST_CASE("prisms have the volume of their shape") {
    const double within = 0.05;  // mm^3 of 15000: corners are floats
    const auto glass_volume = [](const Prism& prism) {
        Mesh mesh;
        add_glass(mesh, somewhere(), prism.body());
        CHECK(is_closed(mesh));
        return volume(mesh);
    };
    CHECK(near(glass_volume(right_angle_prism(25, {"N-BK7"}, "p")), 25.0 * 25 * 25 / 2, within));
    CHECK(near(glass_volume(glass_block(25, 37, "N-BK7", "p")), 25.0 * 25 * 37, within));
    CHECK(near(glass_volume(rhomboid_prism(25, 37, {"N-BK7"}, "p")), 25.0 * 25 * 37, within));
    CHECK(near(glass_volume(cube_reflecting(25, "N-BK7")), 25.0 * 25 * 25, within));
}

TEST_CASE("tubes, plates and lenses have the volume of their shape") {
    constexpr int n = 48;
    Mesh tube;
    add_tube(tube, somewhere(), {40, 10, 12}, n);
    CHECK(near(volume(tube), 40 * (polygon_area(12, n) - polygon_area(10, n)), 0.05));
    Mesh plate;
    add_pierced_plate(plate, somewhere(), {rectangle(30, 40).corners, 2, 0}, n);
    CHECK(near(volume(plate), 30 * 40 * 2, 0.01));
    Mesh pierced;
    add_pierced_plate(pierced, somewhere(), {rectangle(30, 40).corners, 2, 10}, n);
    CHECK(is_closed(pierced));
    // The hole's corners stand at those of the rectangle too: a little more round than n corners alone.
    CHECK(volume(pierced) < 2 * (30 * 40 - polygon_area(10, n)) + 0.01);
    CHECK(volume(pierced) > 2 * (30 * 40 - std::numbers::pi * 100));
    // A paraboloid cap holds half of its cylinder; 8 straight zones of width 1/8 lose (1/8)^2 / 6 of its height.
    Mesh lens;
    add_lens(lens, somewhere(), {20, 4, 6}, n);
    CHECK(is_closed(lens));
    CHECK(near(volume(lens), polygon_area(20, n) * (4 + 6 / 2.0 - 6.0 / 64 / 6), 0.1));
}

TEST_CASE("a plate whose opening would be wider than itself keeps a rim") {
    Mesh mesh;
    add_pierced_plate(mesh, Pose{}, {rectangle(20, 20).corners, 2, 50}, 32);
    CHECK(is_closed(mesh));
    CHECK(volume(mesh) > 0);
}

TEST_CASE("bounds hold everything of a part, and only parts in the light have some") {
    const Setup setup = short_setup();
    const Frame frame = build_frame(setup, report_of(setup));
    REQUIRE(frame.part_bounds.size() == setup.parts.size());
    for (const Mesh& mesh : frame.meshes) {
        const Bounds& part = frame.part_bounds[static_cast<std::size_t>(mesh.part)];
        for (const MeshVertex& vertex : mesh.vertices) {
            CHECK(glm::all(glm::greaterThanEqual(vertex.position, part.low)));
            CHECK(glm::all(glm::lessThanEqual(vertex.position, part.high)));
        }
    }
    CHECK(frame.part_bounds[7].low == frame.part_bounds[7].high);  // the sky
    CHECK(frame.bounds.low.z < 0);         // the dew shade stands before the objective
    CHECK(frame.rear_bounds.low.z > 500);  // behind the drawtube of a 740 mm telescope
    CHECK(frame.head_bounds.high.y == frame.bounds.high.y);  // the eyepieces look up
}
