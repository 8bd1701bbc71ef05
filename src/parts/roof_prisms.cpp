#include "parts/roof_prisms.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "parts/convex_block.hpp"

namespace beamfork {

namespace {

constexpr double half_root = std::numbers::sqrt2 / 2;

// A face of the block as a surface with its origin where the axis meets it.
Surface face_surface(const std::string& name,
                     SurfaceKind kind,
                     const Pose& pose,
                     const std::vector<Point>& corners,
                     const std::string& medium_after = "") {
    Surface surface{name, kind, pose, Polygon{outline_in(pose, corners)}, medium_after};
    return surface;
}

struct Roof {
    HalfSpace left;   // towards -x
    HalfSpace right;  // towards +x
};

// Two planes through `edge` that lean half a right angle to each side of `outward`.
Roof roof_at(const Point& edge, const Direction& outward) {
    const Direction x{1, 0, 0};
    return {{edge, half_root * (outward - x)}, {edge, half_root * (outward + x)}};
}

// The axis meets the very edge of the roof: rounding must not put it beside both faces.
void widen_by_rounding(Aperture& aperture) {
    auto& corners = std::get<Polygon>(aperture).corners;
    glm::dvec2 middle{0};
    for (const glm::dvec2& corner : corners)
        middle += corner / static_cast<double>(corners.size());
    for (glm::dvec2& corner : corners)
        corner += 1e-7 * (corner - middle);
}

void add_roof(Prism& prism,
              const Roof& roof,
              const Block& block,
              std::size_t first,
              FaceCoating coating,
              const std::string& name) {
    const auto kind =
        coating == FaceCoating::bare ? SurfaceKind::total_reflection : SurfaceKind::mirror;
    const std::array sides{std::pair{&roof.right, " right roof face"},
                           std::pair{&roof.left, " left roof face"}};
    for (std::size_t i = 0; i < 2; ++i) {
        const Pose pose = pose_facing(sides[i].first->on, sides[i].first->outward, {1, 0, 0});
        Surface face = face_surface(name + sides[i].second, kind, pose, block.faces.at(first + i));
        widen_by_rounding(face.aperture);
        face.is_roof = true;
        prism.surfaces.push_back(std::move(face));
    }
}

}  // namespace

Prism roof_prism_90(double width, const PrismGlass& glass, const std::string& name) {
    const double half = width / 2;
    const double depth = std::numbers::sqrt3 * half;  // entry face to roof edge, and on to the exit
    const Point edge{0, 0, depth};
    const Roof roof = roof_at(edge, {0, -half_root, half_root});
    const Pose entry;
    const Pose exit = translation(0, depth, depth) * rotation_about_x(to_radians(Degrees{-90}));
    const Block block = block_within({{{0, 0, 0}, {0, 0, -1}},
                                      roof.right,
                                      roof.left,
                                      {exit.origin, {0, 1, 0}},
                                      {{half, 0, 0}, {1, 0, 0}},
                                      {{-half, 0, 0}, {-1, 0, 0}},
                                      {{0, -half, 0}, {0, -1, 0}},
                                      {{0, 0, depth + half}, {0, 0, 1}}});
    Prism prism;
    prism.prism_from_exit = exit;
    prism.surfaces = {face_surface(name + " entry face", SurfaceKind::refraction, entry,
                                   block.faces.at(0), glass.glass)};
    add_roof(prism, roof, block, 1, glass.coating, name);
    prism.surfaces.push_back(
        face_surface(name + " exit face", SurfaceKind::refraction, exit, block.faces.at(3)));
    prism.body = [body = block.body] { return body; };
    return prism;
}

Prism roof_prism_45(double width, const PrismGlass& glass, const std::string& name) {
    const double half = width / 2;
    // The slope of the roof's edge is that of a face that turns light by 135 degrees.
    const double cosine = std::cos(std::numbers::pi / 8);
    const double sine = std::sin(std::numbers::pi / 8);
    // Entry to the first reflection; the roof must take up the whole circle that comes down from there:
    // sqrt(2) b >= sqrt(1 / cos^2 + 2) r.
    const double b = half * std::sqrt(1 / (cosine * cosine) + 2) / std::numbers::sqrt2;
    const double c = std::numbers::sqrt2 * b;  // on to the roof's edge; both ways alike
    const Roof roof = roof_at({0, -c, b}, {0, -cosine, sine});
    const Direction leaving{0, half_root, half_root};
    const Pose exit = translation(0, b - c / 2, c / 2) * rotation_about_x(to_radians(Degrees{-45}));
    const Block block = block_within({{{0, 0, 0}, {0, 0, -1}},
                                      roof.right,
                                      roof.left,
                                      {exit.origin, leaving},
                                      {{half, 0, 0}, {1, 0, 0}},
                                      {{-half, 0, 0}, {-1, 0, 0}}});
    const std::vector<Point>& entry_face = block.faces.at(0);
    const std::vector<Point>& exit_face = block.faces.at(3);
    Prism prism;
    prism.prism_from_exit = exit;
    prism.surfaces = {face_surface(name + " entry face", SurfaceKind::refraction, Pose{},
                                   entry_face, glass.glass),
                      face_surface(name + " exit face from inside", SurfaceKind::total_reflection,
                                   pose_facing({0, 0, b}, leaving, {1, 0, 0}), exit_face)};
    add_roof(prism, roof, block, 1, glass.coating, name);
    prism.surfaces.push_back(
        face_surface(name + " entry face from inside", SurfaceKind::total_reflection,
                     pose_facing({0, b - c, 0}, {0, 0, -1}, {1, 0, 0}), entry_face));
    prism.surfaces.push_back(
        face_surface(name + " exit face", SurfaceKind::refraction, exit, exit_face));
    prism.body = [body = block.body] { return body; };
    return prism;
}

}  // namespace beamfork
