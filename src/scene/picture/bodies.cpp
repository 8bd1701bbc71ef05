// What can be seen of the parts: metal that is cut open, glass with bright edges, mirrors, rings.
#include <algorithm>
#include <limits>
#include <set>

#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/picture_input.hpp"

namespace beamfork {

namespace {

template <class... Cases>
struct overload : Cases... {
    using Cases::operator()...;
};
template <class... Cases>
overload(Cases...) -> overload<Cases...>;  // clang 14 cannot deduce this by itself

// Neighbours in the train differ a little, so that one sees where a part ends.
Rgb metal_tint(Role role, std::size_t part) {
    switch (role) {
    case Role::telescope: return role_rgb(ColourRole::metal) * 1.15F;
    case Role::focuser: return role_rgb(ColourRole::metal) * 0.55F;
    case Role::splitter: return role_rgb(ColourRole::metal) * 0.85F;
    case Role::eyepiece: return role_rgb(ColourRole::metal_dark) * 1.2F;
    default: return role_rgb(ColourRole::metal) * (part % 2 == 0 ? 0.62F : 0.80F);
    }
}

class BodyDrawer {
public:
    BodyDrawer(Frame& frame, const PictureInput& input)
        : frame_(frame), segments_(input.effort.round_segments) {}

    void draw(const PlacedPart& placed, Role role) {
        part_ = static_cast<int>(placed.part);
        tint_ = metal_tint(role, placed.part);
        for (const Body& body : placed.bodies) {
            const Pose pose = placed.world_from_part * body.part_from_body;
            std::visit(overload{[&](const TubeBody& tube) { draw_tube(tube, pose); },
                                [&](const RingBody& ring) { draw_ring(ring, pose); },
                                [&](const GlassBody& glass) { draw_glass(glass, pose); },
                                [&](const MirrorBody& mirror) { draw_mirror(mirror, pose); },
                                [&](const LensBody& lens) { draw_lens(lens, pose); },
                                [&](const PlateBody& plate) { draw_plate(plate, pose); },
                                [&](const DishBody& dish) { draw_dish(dish, pose); }},
                       body.shape);
        }
    }

    // A box round the prisms and mirrors of a diagonal or of one arm of the head.
    void house(const PlacedPart& placed, Role role) {
        if (role != Role::chain && role != Role::splitter) return;
        constexpr double wall = 2.5;
        constexpr double far = std::numeric_limits<double>::max();
        Point low{far};
        Point high{-far};
        const auto include = [&](const Point& corner) {
            low = glm::min(low, corner);
            high = glm::max(high, corner);
        };
        for (const Body& body : placed.bodies) {
            if (const auto* glass = std::get_if<GlassBody>(&body.shape)) {
                for (const Point& corner : glass->corners)
                    include(body.part_from_body.point_out(corner));
            } else if (const auto* mirror = std::get_if<MirrorBody>(&body.shape)) {
                for (const glm::dvec2& corner : mirror->outline)
                    for (const double depth : {0.0, mirror->thickness})
                        include(body.part_from_body.point_out({corner, depth}));
            }
        }
        if (low.x > high.x) return;
        Mesh box;
        box.finish = Finish::metal;
        box.tint = tint_;
        box.part = part_;
        const glm::dvec2 half = 0.5 * glm::dvec2(high - low) + wall;
        const Point middle = 0.5 * (low + high);
        add_plate(box, placed.world_from_part * translation(middle.x, middle.y, 0),
                  {{-half.x, -half.y}, {half.x, -half.y}, {half.x, half.y}, {-half.x, half.y}},
                  low.z - wall, high.z + wall);
        frame_.housings.push_back(std::move(box));
    }

private:
    Mesh& new_mesh(Finish finish, const Rgb& tint) {
        Mesh mesh;
        mesh.finish = finish;
        mesh.tint = tint;
        mesh.part = part_;
        frame_.meshes.push_back(std::move(mesh));
        return frame_.meshes.back();
    }

    void draw_tube(const TubeBody& tube, const Pose& pose) {
        Mesh& mesh = new_mesh(Finish::metal, tint_);
        mesh.is_shell = true;
        mesh.shell_axis_point = glm::vec3(pose.point_out({0, 0, tube.length / 2}));
        mesh.shell_axis = glm::vec3(pose.z());
        // Ends of neighbours that touch would flicker through each other.
        constexpr double apart = 0.02;
        TubeBody shorter = tube;
        shorter.length = std::max(0.5 * tube.length, tube.length - 2 * apart);
        add_tube(mesh, pose * translation(0, 0, 0.5 * (tube.length - shorter.length)), shorter,
                 segments_);
    }

    void draw_ring(const RingBody& ring, const Pose& pose) {
        // Rings of neighbours in one plane would flicker through each other: each part's are a little smaller.
        const double apart = 0.03 * (1 + part_ % 4);
        add_ring(new_mesh(Finish::ring, tint_), pose * translation(0, 0, apart),
                 {ring.inner_radius + apart,
                  std::max(ring.inner_radius + 2 * apart, ring.outer_radius - apart)},
                 segments_);
    }

    void draw_glass(const GlassBody& glass, const Pose& pose) {
        add_glass(new_mesh(Finish::glass, role_rgb(ColourRole::glass)), pose, glass);
        std::set<std::pair<int, int>> edges;
        for (const std::vector<int>& face : glass.faces) {
            for (std::size_t i = 0; i < face.size(); ++i) {
                edges.insert(std::minmax(face[i], face[(i + 1) % face.size()]));
            }
        }
        const auto corner = [&](int i) {
            return glm::vec3(pose.point_out(glass.corners[static_cast<std::size_t>(i)]));
        };
        for (const auto& [a, b] : edges) {
            frame_.lines.push_back({.from = corner(a),
                                    .to = corner(b),
                                    .role = ColourRole::glass,
                                    .width_px = 1.2F,
                                    .part = part_,
                                    .shade = 0.6F});
        }
    }

    void draw_mirror(const MirrorBody& mirror, const Pose& pose) {
        constexpr double coating = 0.05;  // the bright side lies just in front of its backing
        add_plate(new_mesh(Finish::mirror, Rgb{0.9F}), pose, mirror.outline, 0, coating);
        add_plate(new_mesh(Finish::blackened, role_rgb(ColourRole::metal_dark)), pose,
                  mirror.outline, coating, mirror.thickness);
    }

    void draw_dish(const DishBody& dish, const Pose& pose) {
        constexpr double coating = 0.3;
        add_dish_coating(new_mesh(Finish::mirror, Rgb{0.9F}), pose, dish, coating, segments_);
        add_dish_backing(new_mesh(Finish::blackened, role_rgb(ColourRole::metal_dark)), pose, dish,
                         coating, segments_);
    }

    void draw_lens(const LensBody& lens, const Pose& pose) {
        add_lens(new_mesh(Finish::glass, role_rgb(ColourRole::glass)), pose, lens, segments_);
        const Line rim{.role = ColourRole::glass, .width_px = 1, .part = part_, .shade = 0.35F};
        for (const double side : {-0.5, 0.5}) {
            const Pose at = pose * translation(0, 0, side * lens.edge_thickness - lens.bowl);
            add_outline(frame_.lines, circle(at, lens.radius, segments_), rim);
        }
    }

    void draw_plate(const PlateBody& plate, const Pose& pose) {
        add_pierced_plate(new_mesh(Finish::blackened, tint_ * 1.5F), pose, plate, segments_);
    }

    Frame& frame_;
    int segments_;
    int part_ = -1;
    Rgb tint_{0.5F};
};

Bounds empty_bounds() {
    constexpr float far = std::numeric_limits<float>::max();
    return {glm::vec3(far), glm::vec3(-far)};
}

}  // namespace

void add_bodies(Frame& frame, const PictureInput& input) {
    BodyDrawer drawer(frame, input);
    for (const PlacedPart& placed : input.train().placed) {
        drawer.draw(placed, role_of(input.setup.parts[placed.part]));
        drawer.house(placed, role_of(input.setup.parts[placed.part]));
    }
    frame.part_bounds.assign(input.setup.parts.size(), empty_bounds());
    for (const Mesh& mesh : frame.meshes) {
        Bounds& bounds = frame.part_bounds[static_cast<std::size_t>(mesh.part)];
        for (const MeshVertex& vertex : mesh.vertices) {
            bounds.low = glm::min(bounds.low, vertex.position);
            bounds.high = glm::max(bounds.high, vertex.position);
        }
    }
    for (Bounds& bounds : frame.part_bounds) {
        if (bounds.low.x > bounds.high.x) bounds = {};  // nothing to be seen of this part
    }
}

}  // namespace beamfork
