#include "parts/prisms.hpp"

#include <numbers>

#include "parts/kind.hpp"

namespace beamfork {

namespace {

using std::numbers::sqrt2;

constexpr Degrees towards_y{-90};  // about x: z turns to +y, y turns to -z

Surface
face(const std::string& name, const Pose& pose, double width, const std::string& medium_after) {
    return {name, SurfaceKind::refraction, pose, rectangle(width, width), medium_after};
}

// A reflecting face at 45 degrees through `at`, whose frame is the incoming frame turned about x.
Surface fold(const std::string& name,
             const Pose& incoming,
             Degrees turn,
             double width,
             FaceCoating coating) {
    const auto kind =
        coating == FaceCoating::bare ? SurfaceKind::total_reflection : SurfaceKind::mirror;
    return {name, kind, incoming * rotation_about_x(to_radians(turn)),
            rectangle(width, width * sqrt2)};
}

// A block whose outline in the yz plane is given counter-clockwise seen from +x.
GlassBody extruded(const std::vector<glm::dvec2>& outline_yz, double width) {
    GlassBody body;
    const int n = static_cast<int>(outline_yz.size());
    for (const double x : {-width / 2, width / 2}) {
        for (const auto& corner : outline_yz)
            body.corners.emplace_back(x, corner.x, corner.y);
    }
    std::vector<int> low;
    std::vector<int> high;
    for (int i = 0; i < n; ++i) {
        low.push_back(n - 1 - i);
        high.push_back(n + i);
        const int next = (i + 1) % n;
        body.faces.push_back({i, next, n + next, n + i});
    }
    body.faces.push_back(low);
    body.faces.push_back(high);
    return body;
}

Pose exit_towards_y(double width) {
    return translation(0, width / 2, width / 2) * rotation_about_x(to_radians(towards_y));
}

}  // namespace

Prism right_angle_prism(double width, const PrismGlass& glass, const std::string& name) {
    Prism prism;
    const double half = width / 2;
    prism.prism_from_exit = exit_towards_y(width);
    prism.surfaces = in_order(
        face(name + " entry face", Pose{}, width, glass.glass),
        fold(name + " hypotenuse", translation(0, 0, half), Degrees{45}, width, glass.coating),
        face(name + " exit face", prism.prism_from_exit, width, ""));
    prism.body = [half, width] { return extruded({{-half, 0}, {half, 0}, {half, width}}, width); };
    return prism;
}

Prism rhomboid_prism(double width,
                     double offset,
                     const PrismGlass& glass,
                     const std::string& name) {
    Prism prism;
    const double half = width / 2;
    const Pose sideways = translation(0, offset, half) * rotation_about_x(to_radians(towards_y));
    prism.prism_from_exit = translation(0, offset, width);
    prism.surfaces = in_order(
        face(name + " entry face", Pose{}, width, glass.glass),
        fold(name + " first face", translation(0, 0, half), Degrees{45}, width, glass.coating),
        fold(name + " second face", sideways, Degrees{-45}, width, glass.coating),
        face(name + " exit face", prism.prism_from_exit, width, ""));
    prism.body = [half, width, offset] {
        return extruded({{-half, 0}, {offset - half, 0}, {offset + half, width}, {half, width}},
                        width);
    };
    return prism;
}

Prism glass_block(double width, double length, const std::string& glass, const std::string& name) {
    Prism prism;
    const double half = width / 2;
    prism.prism_from_exit = translation(0, 0, length);
    prism.surfaces = in_order(face(name + " entry face", Pose{}, width, glass),
                              face(name + " exit face", prism.prism_from_exit, width, ""));
    prism.body = [half, width, length] {
        return extruded({{-half, 0}, {half, 0}, {half, length}, {-half, length}}, width);
    };
    return prism;
}

namespace {

Surface interface_of_cube(double width, SurfaceKind kind) {
    return {std::string(cube_interface), kind,
            translation(0, 0, width / 2) * rotation_about_x(to_radians(Degrees{45})),
            rectangle(width, width * sqrt2)};
}

}  // namespace

Prism cube_transmitting(double width, const std::string& glass) {
    Prism cube = glass_block(width, width, glass, "cube");
    cube.surfaces.insert(cube.surfaces.begin() + 1, interface_of_cube(width, SurfaceKind::stop));
    return cube;
}

Prism cube_reflecting(double width, const std::string& glass) {
    Prism cube = glass_block(width, width, glass, "cube");
    cube.prism_from_exit = exit_towards_y(width);
    cube.surfaces = in_order(face("cube entry face", Pose{}, width, glass),
                             interface_of_cube(width, SurfaceKind::mirror),
                             face("cube side face", cube.prism_from_exit, width, ""));
    return cube;
}

void append(std::vector<Surface>& surfaces,
            std::vector<Surface> of_prism,
            const Pose& outer_from_prism) {
    surfaces.reserve(surfaces.size() + of_prism.size());
    for (Surface& surface : of_prism) {
        surface.part_from_surface = outer_from_prism * surface.part_from_surface;
        surfaces.push_back(std::move(surface));
    }
}

}  // namespace beamfork
