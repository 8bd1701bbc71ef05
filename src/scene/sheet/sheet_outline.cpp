#include "scene/sheet/sheet_outline.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"

namespace beamfork {

namespace {

double turn(SheetSvg::Spot a, SheetSvg::Spot b, SheetSvg::Spot c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

void extend_chain(SheetSvg::Spots& chain, std::size_t least, SheetSvg::Spot spot) {
    while (chain.size() >= least + 2
           && turn(chain[chain.size() - 2], chain[chain.size() - 1], spot) <= 0)
        chain.pop_back();
    chain.push_back(spot);
}

std::string_view body_style(const Mesh& mesh) {
    if (mesh.finish == Finish::glass) return "body glass";
    if (mesh.finish == Finish::mirror) return "body mirror";
    return mesh.is_shell ? "body shell" : "body metal";
}

std::string_view ray_style(const LightRibbon& ribbon) {
    if (ribbon.clipped) return "ray lost";
    if (ribbon.role == ColourRole::left_arm) return "ray left";
    if (ribbon.role == ColourRole::right_arm) return "ray right";
    return "ray";
}

}  // namespace

PaperPlane
fit_plane(PaperPlane plane, const Bounds& bounds, SheetSvg::Spot corner, SheetSvg::Spot size) {
    plane.origin = {0, 0};
    plane.units_per_mm = 1;
    SheetSvg::Spot low(1e30);
    SheetSvg::Spot high(-1e30);
    for (unsigned i = 0; i < 8; ++i) {
        const glm::vec3 share((i & 1U) != 0, (i & 2U) != 0, (i & 4U) != 0);
        const auto spot = plane.flat(glm::mix(bounds.low, bounds.high, share));
        low = glm::min(low, spot);
        high = glm::max(high, spot);
    }
    const SheetSvg::Spot extent = glm::max(high - low, SheetSvg::Spot(1e-3));
    plane.units_per_mm = std::min(size.x / extent.x, size.y / extent.y);
    plane.origin = corner + 0.5 * size - plane.units_per_mm * 0.5 * (low + high);
    return plane;
}

SheetSvg::Spots convex_outline(SheetSvg::Spots spots) {
    const auto before = [](SheetSvg::Spot a, SheetSvg::Spot b) {
        return a.x != b.x ? a.x < b.x : a.y < b.y;
    };
    std::sort(spots.begin(), spots.end(), before);
    spots.erase(std::unique(spots.begin(), spots.end()), spots.end());
    if (spots.size() < 3) return spots;
    SheetSvg::Spots chain;
    for (const SheetSvg::Spot& spot : spots)
        extend_chain(chain, 0, spot);
    const std::size_t lower = chain.size() - 1;
    for (auto spot = spots.rbegin() + 1; spot != spots.rend(); ++spot)
        extend_chain(chain, lower, *spot);
    chain.pop_back();
    return chain;
}

Frame within_bounds(const Frame& frame, const Bounds& bounds) {
    const auto holds = [&](const glm::vec3& at) {
        return glm::all(glm::lessThanEqual(bounds.low, at))
               && glm::all(glm::lessThanEqual(at, bounds.high));
    };
    Frame inner = frame;
    std::erase_if(inner.meshes, [&](const Mesh& mesh) {
        return !std::all_of(mesh.vertices.begin(), mesh.vertices.end(),
                            [&](const MeshVertex& vertex) { return holds(vertex.position); });
    });
    std::erase_if(inner.light, [&](const LightRibbon& ribbon) {
        return !holds(ribbon.from) || !holds(ribbon.to);
    });
    std::erase_if(inner.lines,
                  [&](const Line& line) { return !holds(line.from) || !holds(line.to); });
    std::erase_if(inner.marks, [&](const Mark& mark) { return !holds(mark.at); });
    std::erase_if(inner.labels, [&](const Label& label) { return !holds(label.at); });
    return inner;
}

void draw_flat_bodies(SheetSvg& svg, const Frame& frame, const PaperPlane& plane) {
    const auto draw_those = [&](bool is_shell, bool is_glass) {
        for (const Mesh& mesh : frame.meshes) {
            if (mesh.is_shell != is_shell || (mesh.finish == Finish::glass) != is_glass) continue;
            SheetSvg::Spots spots;
            for (const MeshVertex& vertex : mesh.vertices)
                spots.push_back(plane.flat(vertex.position));
            svg.path(convex_outline(std::move(spots)), body_style(mesh), true);
        }
    };
    draw_those(true, false);
    draw_those(false, false);
    draw_those(false, true);
}

void draw_flat_light(SheetSvg& svg, const Frame& frame, const PaperPlane& plane) {
    constexpr float joined = 1e-3F;  // mm
    SheetSvg::Spots run;
    const LightRibbon* last = nullptr;
    const auto finish = [&] {
        if (last != nullptr) svg.path(run, ray_style(*last));
        run.clear();
    };
    for (const LightRibbon& ribbon : frame.light) {
        const bool goes_on = last != nullptr && ray_style(*last) == ray_style(ribbon)
                             && glm::distance(last->to, ribbon.from) < joined;
        if (!goes_on) {
            finish();
            run.push_back(plane.flat(ribbon.from));
        }
        run.push_back(plane.flat(ribbon.to));
        last = &ribbon;
    }
    finish();
}

namespace {

constexpr double word_size = 10.5;
constexpr double word_gap = 12;  // of the leader's end

}  // namespace

double focus_margin(const Frame& frame) {
    double widest = 0;
    for (const Label& label : frame.labels) {
        if (label.role == LabelRole::dimension)
            widest = std::max(widest, about_width(label.text, word_size) + word_gap);
    }
    return widest;
}

void draw_flat_focus(SheetSvg& svg, const Frame& frame, const PaperPlane& plane, double margin) {
    for (const Line& line : frame.lines) {
        if (line.on_top && line.role == ColourRole::shortfall)
            svg.line(plane.flat(line.from), plane.flat(line.to),
                     line.dashed ? "stroke dashed" : "stroke bold");
    }
    for (const Mark& mark : frame.marks) {
        if (mark.shape != MarkShape::diamond) continue;
        const bool is_short = mark.role == ColourRole::shortfall;
        svg.diamond(plane.flat(mark.at), 4.5, is_short ? "mark short" : "mark good");
    }
    struct Told {
        SheetSvg::Spot at;
        std::string_view words;
    };
    std::vector<Told> told;
    for (const Label& label : frame.labels) {
        if (label.role == LabelRole::dimension) told.push_back({plane.flat(label.at), label.text});
    }
    std::ranges::sort(told, {}, [](const Told& one) { return one.at.y; });
    constexpr double line_height = 13;
    double lowest = -1e9;
    for (const Told& one : told) {
        const double y = std::max(one.at.y, lowest + line_height);
        lowest = y;
        svg.line(one.at + SheetSvg::Spot{6, 0}, {margin + word_gap - 4, y}, "leader");
        svg.words({margin + word_gap, y + 4}, one.words, "small strong halo", "start");
    }
}

void draw_scale_bar(SheetSvg& svg, const PaperPlane& plane, SheetSvg::Spot at) {
    constexpr std::array round_lengths{10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0};
    constexpr double wanted_width = 70;
    double length = round_lengths.front();
    for (const double mm : round_lengths) {
        if (mm * plane.units_per_mm <= wanted_width) length = mm;
    }
    const double width = length * plane.units_per_mm;
    svg.line(at, at + SheetSvg::Spot{width, 0}, "stroke bold");
    for (const double x : {0.0, width})
        svg.line(at + SheetSvg::Spot{x, -4}, at + SheetSvg::Spot{x, 4}, "stroke");
    svg.words(at + SheetSvg::Spot{width + 7, 4}, format_number(length, 0) + " mm", "small",
              "start");
}

}  // namespace beamfork
