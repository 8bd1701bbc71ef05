#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picking.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sample_setups.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

Mesh square_at(double z, int part) {
    Mesh mesh;
    mesh.part = part;
    add_plate(mesh, translation(0, 0, z), rectangle(20, 20).corners, 0, 1);
    return mesh;
}

constexpr ViewRay along_z{{0, 0, -100}, {0, 0, 1}};

}  // namespace

TEST_CASE("the nearest body along the line of sight is picked, whatever the order") {
    Frame frame;
    frame.meshes = {square_at(50, 1), square_at(10, 0), square_at(90, 2)};
    CHECK(part_at(frame, along_z) == 0);
    CHECK(part_at(frame, {{0, 0, 30}, {0, 0, 1}}) == 1);
    CHECK(part_at(frame, {{0, 0, 300}, {0, 0, -1}}) == 2);
}

TEST_CASE("nothing is picked beside the bodies or behind the viewer") {
    Frame frame;
    frame.meshes = {square_at(50, 1)};
    CHECK_FALSE(part_at(frame, {{11, 0, -100}, {0, 0, 1}}).has_value());
    CHECK_FALSE(part_at(frame, {{0, 0, 100}, {0, 0, 1}}).has_value());
    CHECK_FALSE(part_at(Frame{}, along_z).has_value());
}

TEST_CASE("one picks through the opened side of a tube and through hidden metal, not through a "
          "whole tube") {
    Frame frame;
    Mesh tube;
    tube.part = 0;
    tube.is_shell = true;
    tube.shell_axis = {0, 1, 0};
    add_tube(tube, rotation_about_x(to_radians(Degrees{-90})), {30, 20, 22}, 48);
    for (MeshVertex& vertex : tube.vertices)
        vertex.position.y -= 15;
    frame.meshes = {tube, square_at(0, 1)};  // a plate inside of the tube
    ViewOptions options;
    options.shells = ShellView::open;
    CHECK(part_at(frame, along_z, options) == 1);
    options.shells = ShellView::hidden;
    CHECK(part_at(frame, along_z, options) == 1);
    options.shells = ShellView::whole;
    CHECK(part_at(frame, along_z, options) == 0);
    // Beside the plate the far wall is seen through the opening, and nothing when metal is hidden.
    const ViewRay beside{{15, 0, -100}, {0, 0, 1}};
    options.shells = ShellView::open;
    CHECK(part_at(frame, beside, options) == 0);
    options.shells = ShellView::hidden;
    CHECK_FALSE(part_at(frame, beside, options).has_value());
}

TEST_CASE("a section takes away the metal on its near side") {
    Frame frame;
    frame.meshes = {square_at(0, 0)};
    ViewOptions options;
    options.shells = ShellView::section;
    options.section_x_mm = 5;
    CHECK_FALSE(part_at(frame, {{0, 0, -100}, {0, 0, 1}}, options).has_value());
    CHECK(part_at(frame, {{7, 0, -100}, {0, 0, 1}}, options) == 0);
}

TEST_CASE("in a real picture the telescope and the eyepieces are picked where they stand") {
    const Setup setup = short_setup();
    const Report report = report_of(setup);
    const Frame frame = build_frame(setup, report);
    const Viewport viewport{1200, 700};
    const Camera camera = standard_view(StandardView::side, frame, viewport.aspect());
    const auto part_under = [&](const glm::vec3& place) {
        const auto pixel = project(camera, place, viewport);
        REQUIRE(pixel);
        return part_at(frame, ray_through(camera, *pixel, viewport));
    };
    CHECK(part_under({0, 0, 250}) == 0);  // the far wall of the telescope's tube, seen from inside
    const Point stop = report.train.path(Eye::left).world_from_field_stop.origin;
    CHECK(part_under(glm::vec3(stop) + glm::vec3(0, 10, 0)) == 5);
    CHECK_FALSE(part_at(frame, ray_through(camera, {5, 5}, viewport)).has_value());
}
