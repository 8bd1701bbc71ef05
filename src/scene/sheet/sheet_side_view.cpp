// The train to scale on paper: all of it from the side, and the head with both arms beside each other.
#include <algorithm>
#include <cmath>

#include "scene/sheet/sheet_drawings.hpp"
#include "scene/sheet/sheet_outline.hpp"
#include "scene/unfolded_path/unfolded_path_view.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

using Spot = SheetSvg::Spot;

constexpr double balloon_radius = 9;
constexpr double lane_height = 30;

/// Enough rays to see the beam, few enough to print.
constexpr PictureEffort paper_effort{.axis_rays = 16,
                                     .rim_rays = 4,
                                     .edge_points = 2,
                                     .edge_rays = 2,
                                     .disc_pixels = 4,
                                     .round_segments = 32};

struct PaperView {
    PaperPlane plane;
    Bounds bounds;
    double width = 720;
    /// Of the train: the page would shrink a taller drawing, letters and all.
    double most_height = 248;
    std::string_view key;
    std::string_view title;
};

bool is_in(const Bounds& bounds, const glm::vec3& at) {
    return glm::all(glm::lessThanEqual(bounds.low - 1.0F, at))
           && glm::all(glm::lessThanEqual(at, bounds.high + 1.0F));
}

// A place on a part: the middle of its largest outline, for the middle of two eyepieces is air.
Spot on_part(const Frame& frame, std::size_t part, const PaperPlane& at) {
    Spot middle = at.flat(frame.part_bounds[part].centre());
    double largest = 0;
    for (const Mesh& mesh : frame.meshes) {
        if (mesh.part != static_cast<int>(part) || mesh.vertices.empty()) continue;
        Spot low = at.flat(mesh.vertices.front().position);
        Spot high = low;
        for (const MeshVertex& vertex : mesh.vertices) {
            low = glm::min(low, at.flat(vertex.position));
            high = glm::max(high, at.flat(vertex.position));
        }
        const double area = (high.x - low.x) * (high.y - low.y);
        if (area <= largest) continue;
        largest = area;
        middle = 0.5 * (low + high);
    }
    return middle;
}

// Numbers in balloons above the drawing, each with a leader to the middle of its part.
void draw_balloons(SheetSvg& svg, const Frame& frame, const PaperView& view, const PaperPlane& at) {
    struct Balloon {
        std::size_t part;
        Spot spot;
    };
    std::vector<Balloon> balloons;
    for (std::size_t part = 0; part < frame.part_bounds.size(); ++part) {
        const Bounds& bounds = frame.part_bounds[part];
        if (bounds.low == bounds.high || !is_in(view.bounds, bounds.centre())) continue;
        balloons.push_back({part, on_part(frame, part, at)});
    }
    std::sort(balloons.begin(), balloons.end(),
              [](const Balloon& a, const Balloon& b) { return a.spot.x < b.spot.x; });
    std::vector<LaneWord> words;
    for (const Balloon& balloon : balloons)
        words.push_back({balloon.spot.x, 2 * balloon_radius});
    const auto lefts = lane_places(words, view.width, 4);
    for (std::size_t i = 0; i < balloons.size(); ++i) {
        const Spot centre{lefts[i] + balloon_radius, balloon_radius + 1};
        svg.line(centre + Spot{0, balloon_radius}, balloons[i].spot, "leader");
        svg.circle(balloons[i].spot, 1.5, "dot");
        svg.circle(centre, balloon_radius, "balloon");
        svg.words(centre + Spot{0, 4}, std::to_string(balloons[i].part + 1), "small strong",
                  "middle");
    }
}

std::string drawn(const Frame& frame, PaperView view) {
    const double margin = view.width - focus_margin(frame);
    const Spot size{margin - 8, view.most_height};
    PaperPlane plane = fit_plane(view.plane, view.bounds, {0, 0}, size);
    const glm::vec3 extent = view.bounds.high - view.bounds.low;
    const double tall = plane.units_per_mm * glm::dot(glm::abs(view.plane.up), extent);
    plane = fit_plane(view.plane, view.bounds, {4, lane_height + 6}, {size.x, tall});
    const double height = lane_height + tall + 40;
    SheetSvg svg(view.width, height, view.key, view.title);
    svg.open_clip({0, lane_height}, {view.width, tall + 12});
    draw_flat_bodies(svg, frame, plane);
    draw_flat_light(svg, frame, plane);
    svg.close();
    draw_flat_focus(svg, frame, plane, margin);
    draw_balloons(svg, frame, view, plane);
    draw_scale_bar(svg, plane, {4, height - 8});
    return svg.text();
}

Bounds grown(Bounds bounds, float by) { return {bounds.low - by, bounds.high + by}; }

// Left arm at the left, eyepieces up: the plane that holds both arms and the way the light leaves.
PaperPlane head_plane(const Frame& frame, const Train& train) {
    const Point apart = train.path(Eye::right).world_from_field_stop.origin
                        - train.path(Eye::left).world_from_field_stop.origin;
    const glm::vec3 up = glm::normalize(frame.eye_axis);
    glm::vec3 right(apart);
    right -= glm::dot(right, up) * up;
    if (glm::length(right) < 1) right = glm::vec3(1, 0, 0);
    return {.right = glm::normalize(right), .up = up};
}

}  // namespace

std::string sheet_side_view(const Setup& setup, const Report& report) {
    const Frame frame = build_frame(setup, report, paper_effort);
    return drawn(frame, {.plane = {},
                         .bounds = grown(frame.bounds, 2),
                         .key = "side",
                         .title = "The whole train from the side, to scale"});
}

std::string sheet_head_view(const Setup& setup, const Report& report) {
    const Frame frame = build_frame(setup, report, paper_effort);
    const Bounds bounds = grown(frame.rear_bounds, 12);
    return drawn(within_bounds(frame, bounds), {.plane = head_plane(frame, report.train),
                                                .bounds = bounds,
                                                .width = 360,
                                                .most_height = 270,
                                                .key = "head",
                                                .title = "Both arms beside each other, to scale"});
}

}  // namespace beamfork
