#include <cmath>
#include <functional>
#include <map>

#include "parts/prisms.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

const PrismGlass crown{"N-BK7", FaceCoating::bare};

Point corner(const GlassBody& body, int number) {
    return body.corners.at(static_cast<std::size_t>(number));
}

// Six times the volume is the sum over outward triangles of the triple product (divergence theorem).
double volume(const GlassBody& body) {
    double sum = 0;
    for (const auto& face : body.faces) {
        for (std::size_t i = 2; i < face.size(); ++i) {
            sum += glm::dot(corner(body, face[0]),
                            glm::cross(corner(body, face[i - 1]), corner(body, face[i])));
        }
    }
    return sum / 6;
}

struct Plane {
    Point on;
    Direction outward;
};
Plane plane_of(const GlassBody& body, const std::vector<int>& face) {
    const Point a = corner(body, face[0]);
    return {a, glm::normalize(glm::cross(corner(body, face[1]) - a, corner(body, face[2]) - a))};
}

// Every optical surface lies, with its whole outline, in a face of the block of glass.
bool is_on_a_face(const Surface& surface, const GlassBody& body) {
    for (const auto& face : body.faces) {
        const Plane plane = plane_of(body, face);
        bool all = true;
        for (const glm::dvec2& at : outline(surface.aperture, 8)) {
            const Point point = surface.part_from_surface.point_out({at, 0});
            all = all && std::abs(glm::dot(point - plane.on, plane.outward)) < rounding;
        }
        if (all) return true;
    }
    return false;
}

void check_is_closed_convex_block(const GlassBody& body) {
    std::map<std::pair<int, int>, int> edges;
    for (const auto& face : body.faces) {
        const Plane plane = plane_of(body, face);
        for (std::size_t i = 0; i < face.size(); ++i) {
            ++edges[{face[i], face[(i + 1) % face.size()]}];
            CHECK(near(glm::dot(corner(body, face[i]) - plane.on, plane.outward), 0,
                       rounding));  // flat
        }
        for (const Point& each : body.corners)
            CHECK(glm::dot(each - plane.on, plane.outward) <= rounding);
    }
    for (const auto& [edge, count] : edges) {
        CHECK(count == 1);
        CHECK(edges.contains(
            {edge.second, edge.first}));  // each edge has a neighbour on its other side
    }
}

// Follows the axis from face to face by reflection alone and gives its length from the first face to the last.
double axis_length(const Prism& prism, Direction along = {0, 0, 1}) {
    double length = 0;
    Point at = prism.surfaces.front().part_from_surface.origin;
    for (const Surface& surface : prism.surfaces) {
        const Pose& pose = surface.part_from_surface;
        const double step = glm::dot(pose.origin - at, along);
        CHECK(glm::distance(at + step * along, pose.origin)
              < rounding);                     // the axis meets the face in its middle
        CHECK(glm::dot(along, pose.z()) > 0);  // z along the incoming light
        length += step;
        at = pose.origin;
        const bool reflects =
            surface.kind == SurfaceKind::mirror || surface.kind == SurfaceKind::total_reflection;
        if (reflects) along = mirrored(along, pose.z());
    }
    CHECK(glm::distance(along, prism.prism_from_exit.z()) < rounding);
    CHECK(glm::distance(at, prism.prism_from_exit.origin) < rounding);
    return length;
}

}  // namespace

TEST_CASE("the right-angle prism is half a cube of glass whose three faces are the optical ones") {
    const Prism prism = right_angle_prism(25, crown, "prism");
    check_is_closed_convex_block(prism.body());
    CHECK(near(volume(prism.body()), 25.0 * 25 * 25 / 2, 1e-8));
    for (const Surface& surface : prism.surfaces)
        CHECK(is_on_a_face(surface, prism.body()));
    CHECK(near(axis_length(prism), 25, rounding));
}

TEST_CASE("the rhomboid prism is a slanted block whose four faces are the optical ones") {
    for (const double offset : {25.0, 32.5, 50.0}) {
        CAPTURE(offset);
        const Prism prism = rhomboid_prism(25, offset, crown, "rhomboid");
        check_is_closed_convex_block(prism.body());
        CHECK(near(volume(prism.body()), 25 * 25 * offset, 1e-8));
        for (const Surface& surface : prism.surfaces)
            CHECK(is_on_a_face(surface, prism.body()));
        CHECK(near(axis_length(prism), 25 + offset, rounding));
        CHECK(prism.prism_from_exit
              == translation(0, offset, 25));  // displaced, parallel, not turned
    }
}

TEST_CASE("the cube divides one cube of glass between a straight way and a way to its side") {
    const Prism straight = cube_transmitting(25, "N-BK7");
    const Prism aside = cube_reflecting(25, "N-BK7");
    for (const Prism* cube : {&straight, &aside}) {
        check_is_closed_convex_block(cube->body());
        CHECK(near(volume(cube->body()), 25.0 * 25 * 25, 1e-8));
        CHECK(near(axis_length(*cube), 25, rounding));
    }
    CHECK(is_on_a_face(aside.surfaces.back(), aside.body()));
    CHECK(straight.surfaces.at(1).part_from_surface
          == aside.surfaces.at(1).part_from_surface);  // one interface
    CHECK(near(straight.surfaces.at(1).part_from_surface.z().z, std::sqrt(0.5),
               1e-15));  // at 45 degrees
}

TEST_CASE(
    "a diagonal prism turns the frame: light leaves along +y, up becomes back, right stays right") {
    const Pose exit = right_angle_prism(25, crown, "prism").prism_from_exit;
    CHECK(exit.z() == Direction{0, 1, 0});
    CHECK(exit.y() == Direction{0, 0, -1});
    CHECK(exit.x() == Direction{1, 0, 0});
}

TEST_CASE("a bare face reflects totally, a coated one as a mirror") {
    CHECK(right_angle_prism(25, crown, "p").surfaces.at(1).kind == SurfaceKind::total_reflection);
    CHECK(right_angle_prism(25, {"N-BK7", FaceCoating::mirrored}, "p").surfaces.at(1).kind
          == SurfaceKind::mirror);
}

TEST_CASE("a prism moved into a part keeps its shape and comes behind what is there already") {
    std::vector<Surface> surfaces = {{"before", SurfaceKind::stop, Pose{}}};
    const Prism prism = right_angle_prism(25, crown, "prism");
    append(surfaces, prism.surfaces, translation(0, 0, 40));
    REQUIRE(surfaces.size() == 4);
    CHECK(surfaces[0].name == "before");
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(surfaces[i + 1].part_from_surface.origin
              == prism.surfaces[i].part_from_surface.origin + Point{0, 0, 40});
        CHECK(surfaces[i + 1].part_from_surface.axes == prism.surfaces[i].part_from_surface.axes);
    }
}
