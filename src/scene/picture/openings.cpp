// The openings as outlines. Those that take light stand out in the clipping colour and are named: the worst always.
#include <algorithm>

#include "scene/picture/mesh_shapes.hpp"
#include "scene/picture/opening_loss.hpp"
#include "scene/picture/picture_input.hpp"
#include "trace/forked_ray.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Of the objective's light, at the worst ring of the field.
constexpr double share_that_stands_out = 0.08;
constexpr std::size_t named_openings = 3;  // the worst ones; the others by pointing at their part
constexpr double least_leak = 0.001;       // glass that should let nothing out is named sooner

struct LossyOpening {
    const PlacedSurface* surface = nullptr;
    Loss loss;
};

std::vector<Point> outline_in_world(const PlacedSurface& surface, int segments) {
    std::vector<Point> corners;
    for (const glm::dvec2& corner : outline(surface.aperture, segments)) {
        corners.push_back(surface.world_from_surface.point_out({corner, 0}));
    }
    return corners;
}

void draw_opening(Frame& frame, const PlacedSurface& surface, const Loss& loss, int segments) {
    const bool takes = loss.share >= share_that_shows;
    const bool is_plain_opening =
        surface.kind == SurfaceKind::stop && std::holds_alternative<Circle>(surface.aperture);
    if (!takes && !is_plain_opening) return;  // faces of prisms are drawn by their edges
    Line style;
    style.role = takes ? ColourRole::clipped : ColourRole::metal;
    style.width_px = loss.share >= share_that_stands_out ? 2.5F : takes ? 1.5F : 1.0F;
    style.part = static_cast<int>(surface.part);
    style.is_result = takes;
    add_outline(frame.lines, outline_in_world(surface, segments), style);
}

std::string percent(double share) {
    return share < 0.01 ? "1 %" : fmt::format("{:.0f} %", 100 * share);
}

// Both arms often have an opening of the same name: it is named once, where it takes more.
void name_the_worst(Frame& frame, const PictureInput& input, std::vector<LossyOpening> found) {
    std::stable_sort(found.begin(), found.end(), [](const LossyOpening& a, const LossyOpening& b) {
        return a.loss.share > b.loss.share;
    });
    std::vector<std::string> named;
    for (const auto& [surface, loss] : found) {
        const std::string name = input.setup.parts[surface->part].name + ": " + surface->name;
        if (std::find(named.begin(), named.end(), name) != named.end()) continue;
        named.push_back(name);
        const bool is_worst = named.size() <= named_openings;
        const Point at = outline_in_world(*surface, 8).front();
        std::string text =
            fmt::format("{} {} {}{}", surface->name, loss.is_leak ? "leaks" : "takes",
                        percent(loss.share), place_in_field(loss));
        frame.labels.push_back({.at = glm::vec3(at),
                                .text = std::move(text),
                                .role = LabelRole::clipped,
                                .part = static_cast<int>(surface->part),
                                .priority = is_worst ? 3 : 11,
                                .on_hover = !is_worst});
    }
}

}  // namespace

void add_openings(Frame& frame, const PictureInput& input) {
    const std::size_t dividing = dividing_surface(input.train());
    std::vector<LossyOpening> lossy;
    for (const Eye eye : both_eyes) {
        const auto& surfaces = input.train().path(eye).surfaces;
        for (std::size_t i = 0; i + 1 < surfaces.size();
             ++i) {  // the field stop is drawn with its light
            Loss loss = loss_at(input.report.clipping_of(eye), i);
            if (i <= dividing) {  // common to both eyes: drawn once, as the worse of them
                if (eye == Eye::right) continue;
                const Loss other = loss_at(input.report.clipping_of(Eye::right), i);
                if (other.share > loss.share) loss = other;
            }
            draw_opening(frame, surfaces[i], loss, input.effort.round_segments);
            if (loss.share >= (loss.is_leak ? least_leak : share_that_shows))
                lossy.push_back({&surfaces[i], loss});
        }
    }
    name_the_worst(frame, input, std::move(lossy));
}

}  // namespace beamfork
