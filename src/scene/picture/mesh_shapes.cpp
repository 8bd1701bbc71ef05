#include "scene/picture/mesh_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace beamfork {

namespace {

std::uint32_t add_vertex(Mesh& mesh, const Point& at, const Direction& normal) {
    mesh.vertices.push_back({glm::vec3(at), glm::vec3(normal)});
    return static_cast<std::uint32_t>(mesh.vertices.size() - 1);
}

void add_triangle(Mesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c) {
    mesh.indices.insert(mesh.indices.end(), {a, b, c});
}

ProfilePoint facing_out(double radius, double along) { return {radius, along, 1, 0}; }
ProfilePoint facing_in(double radius, double along) { return {radius, along, -1, 0}; }
ProfilePoint facing_back(double radius, double along) { return {radius, along, 0, 1}; }
ProfilePoint facing_front(double radius, double along) { return {radius, along, 0, -1}; }

}  // namespace

void add_turned(Mesh& mesh,
                const Pose& pose,
                const std::vector<ProfilePoint>& profile,
                int segments) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    const auto count = static_cast<std::uint32_t>(profile.size());
    const auto turns = static_cast<std::uint32_t>(segments);
    for (std::uint32_t turn = 0; turn < turns; ++turn) {
        const double angle = 2 * std::numbers::pi * turn / turns;
        const Direction out = std::cos(angle) * pose.x() + std::sin(angle) * pose.y();
        for (const ProfilePoint& point : profile) {
            add_vertex(mesh, pose.origin + point.radius * out + point.along * pose.z(),
                       point.normal_out * out + point.normal_along * pose.z());
        }
    }
    for (std::uint32_t turn = 0; turn < turns; ++turn) {
        const std::uint32_t here = first + turn * count;
        const std::uint32_t next = first + (turn + 1) % turns * count;
        for (std::uint32_t i = 0; i + 1 < count; ++i) {
            const ProfilePoint& a = profile[i];
            const ProfilePoint& b = profile[i + 1];
            if (a.radius == b.radius && a.along == b.along) continue;  // a sharp edge
            if (a.radius > 0) add_triangle(mesh, here + i, next + i, next + i + 1);
            if (b.radius > 0) add_triangle(mesh, here + i, next + i + 1, here + i + 1);
        }
    }
}

void add_face(Mesh& mesh, const std::vector<Point>& corners) {
    const Direction normal =
        glm::normalize(glm::cross(corners[1] - corners[0], corners[2] - corners[0]));
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (const Point& corner : corners)
        add_vertex(mesh, corner, normal);
    for (std::uint32_t i = 2; i < corners.size(); ++i)
        add_triangle(mesh, first, first + i - 1, first + i);
}

void add_plate(
    Mesh& mesh, const Pose& pose, const std::vector<glm::dvec2>& outline, double low, double high) {
    std::vector<Point> front;
    std::vector<Point> back;
    const std::size_t count = outline.size();
    for (std::size_t i = 0; i < count; ++i) {
        back.push_back(pose.point_out({outline[i], high}));
        front.push_back(pose.point_out({outline[count - 1 - i], low}));
        const glm::dvec2& next = outline[(i + 1) % count];
        add_face(mesh, {pose.point_out({outline[i], low}), pose.point_out({next, low}),
                        pose.point_out({next, high}), pose.point_out({outline[i], high})});
    }
    add_face(mesh, front);
    add_face(mesh, back);
}

namespace {

// Where the half line from the origin at `angle` leaves a convex outline round it.
glm::dvec2 on_outline(const std::vector<glm::dvec2>& outline, double angle) {
    const glm::dvec2 along{std::cos(angle), std::sin(angle)};
    double reach = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2 edge = outline[(i + 1) % outline.size()] - outline[i];
        const glm::dvec2 outward{edge.y, -edge.x};
        const double approach = glm::dot(along, outward);
        if (approach > 1e-12) reach = std::min(reach, glm::dot(outline[i], outward) / approach);
    }
    return reach * along;
}

// The angles of the outline's corners and of an even circle, in order.
std::vector<double> plate_angles(const std::vector<glm::dvec2>& outline, int segments) {
    std::vector<double> angles;
    for (const glm::dvec2& corner : outline)
        angles.push_back(std::atan2(corner.y, corner.x));
    for (int i = 0; i < segments; ++i)
        angles.push_back(std::numbers::pi * (2.0 * i / segments - 1));
    std::sort(angles.begin(), angles.end());
    const auto same = [](double a, double b) { return b - a < 1e-6; };
    angles.erase(std::unique(angles.begin(), angles.end(), same), angles.end());
    return angles;
}

}  // namespace

void add_pierced_plate(Mesh& mesh, const Pose& pose, const PlateBody& plate, int segments) {
    const double hole = std::min(plate.hole_radius, inner_radius(Polygon{plate.outline}) - 0.5);
    if (hole <= 0) return add_plate(mesh, pose, plate.outline, 0, plate.thickness);
    const auto angles = plate_angles(plate.outline, segments);
    for (std::size_t i = 0; i < angles.size(); ++i) {
        const double next_angle = angles[(i + 1) % angles.size()];
        const glm::dvec2 in_a = hole * glm::dvec2{std::cos(angles[i]), std::sin(angles[i])};
        const glm::dvec2 in_b = hole * glm::dvec2{std::cos(next_angle), std::sin(next_angle)};
        const glm::dvec2 out_a = on_outline(plate.outline, angles[i]);
        const glm::dvec2 out_b = on_outline(plate.outline, next_angle);
        const auto low = [&](const glm::dvec2& at) { return pose.point_out({at, 0}); };
        const auto high = [&](const glm::dvec2& at) {
            return pose.point_out({at, plate.thickness});
        };
        add_face(mesh, {high(in_a), high(out_a), high(out_b), high(in_b)});
        add_face(mesh, {low(in_b), low(out_b), low(out_a), low(in_a)});
        add_face(mesh, {low(out_a), low(out_b), high(out_b), high(out_a)});
        add_face(mesh, {low(in_b), low(in_a), high(in_a), high(in_b)});
    }
}

void add_tube(Mesh& mesh, const Pose& pose, const TubeBody& tube, int segments) {
    const double inner = tube.inner_radius;
    const double outer = tube.outer_radius;
    const double end = tube.length;
    add_turned(mesh, pose,
               {facing_out(outer, 0), facing_out(outer, end), facing_back(outer, end),
                facing_back(inner, end), facing_in(inner, end), facing_in(inner, 0),
                facing_front(inner, 0), facing_front(outer, 0)},
               segments);
}

void add_ring(Mesh& mesh, const Pose& pose, const RingBody& ring, int segments) {
    constexpr double thickness = 0.8;  // so that it is seen edge-on
    add_tube(mesh, pose * translation(0, 0, -thickness / 2),
             {thickness, ring.inner_radius, ring.outer_radius}, segments);
}

void add_glass(Mesh& mesh, const Pose& pose, const GlassBody& glass) {
    for (const std::vector<int>& face : glass.faces) {
        std::vector<Point> corners;
        for (const int corner : face)
            corners.push_back(pose.point_out(glass.corners.at(static_cast<std::size_t>(corner))));
        add_face(mesh, corners);
    }
}

void add_lens(Mesh& mesh, const Pose& pose, const LensBody& lens, int segments) {
    constexpr int zones = 8;
    const double half_edge = lens.edge_thickness / 2;
    const double sag = lens.bulge / 2;  // of each face, a paraboloid, as is the bowl
    const auto surface = [&](double share, double side) {
        const double slope = 2 * (side * sag + lens.bowl) * share / lens.radius;
        const double length = std::sqrt(1 + slope * slope);
        const double along =
            side * (half_edge + sag * (1 - share * share)) - lens.bowl * share * share;
        return ProfilePoint{share * lens.radius, along, side * slope / length, side / length};
    };
    std::vector<ProfilePoint> profile;
    for (int i = 0; i <= zones; ++i)
        profile.push_back(surface(static_cast<double>(i) / zones, -1));
    profile.push_back(facing_out(lens.radius, -half_edge - lens.bowl));
    profile.push_back(facing_out(lens.radius, half_edge - lens.bowl));
    for (int i = zones; i >= 0; --i)
        profile.push_back(surface(static_cast<double>(i) / zones, 1));
    add_turned(mesh, pose, profile, segments);
}

namespace {

constexpr int dish_zones = 12;

// A curved side of a dish from its hole to its rim, `depth` behind the reflecting surface, facing -z or +z.
std::vector<ProfilePoint> dish_side(const DishBody& dish, double depth, double facing) {
    std::vector<ProfilePoint> side;
    for (int zone = 0; zone <= dish_zones; ++zone) {
        const double radius =
            std::lerp(dish.hole_radius, dish.radius, static_cast<double>(zone) / dish_zones);
        const double height = sag(dish.shape, radius);
        const Direction normal = normal_at(dish.shape, {radius, 0, height});
        side.push_back({radius, height + depth, -facing * normal.x, -facing * normal.z});
    }
    return side;
}

void add_dish(Mesh& mesh,
              const Pose& pose,
              const DishBody& dish,
              std::vector<ProfilePoint> front,
              const std::vector<ProfilePoint>& back,
              int segments) {
    front.push_back(facing_out(dish.radius, front.back().along));
    front.push_back(facing_out(dish.radius, back.back().along));
    front.insert(front.end(), back.rbegin(), back.rend());
    if (dish.hole_radius > 0) {
        front.push_back(facing_in(dish.hole_radius, back.front().along));
        front.push_back(facing_in(dish.hole_radius, front.front().along));
    }
    add_turned(mesh, pose, front, segments);
}

}  // namespace

void add_dish_coating(
    Mesh& mesh, const Pose& pose, const DishBody& dish, double depth, int segments) {
    add_dish(mesh, pose, dish, dish_side(dish, 0, -1), dish_side(dish, depth, 1), segments);
}

void add_dish_backing(
    Mesh& mesh, const Pose& pose, const DishBody& dish, double depth, int segments) {
    add_dish(
        mesh, pose, dish, dish_side(dish, depth, -1),
        {facing_back(dish.hole_radius, dish.thickness), facing_back(dish.radius, dish.thickness)},
        segments);
}

void add_outline(std::vector<Line>& lines, const std::vector<Point>& corners, const Line& style) {
    for (std::size_t i = 0; i < corners.size(); ++i) {
        Line line = style;
        line.from = glm::vec3(corners[i]);
        line.to = glm::vec3(corners[(i + 1) % corners.size()]);
        lines.push_back(line);
    }
}

std::vector<Point> circle(const Pose& pose, double radius, int segments) {
    std::vector<Point> points;
    for (int i = 0; i < segments; ++i) {
        const double angle = 2 * std::numbers::pi * i / segments;
        points.push_back(pose.point_out({radius * std::cos(angle), radius * std::sin(angle), 0}));
    }
    return points;
}

}  // namespace beamfork
