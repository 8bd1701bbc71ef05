#include "scene/unfolded_path/unfolded_track.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "scene/picture/focus_gap.hpp"
#include "study/findings/report.hpp"
#include "trace/forked_ray.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double same_place = 1e-6;     // mm: rounding of a sum of lengths
constexpr double behind_the_end = 14;   // mm that light is followed behind field stop and image
constexpr double farthest_image = 300;  // mm behind the field stop that an image is looked for

JawKind jaw_kind(const EyePath& path, std::size_t i, const OpeningSection& section) {
    const PlacedSurface& surface = path.surfaces[i];
    if (i + 1 == path.surfaces.size()) return JawKind::field_stop;
    if (surface.kind == SurfaceKind::thin_lens || surface.kind == SurfaceKind::objective)
        return JawKind::lens;
    const bool leans = std::abs(section.above.x - section.below.x) > same_place;
    if (leans || !(is_opening(surface.kind) || surface.kind == SurfaceKind::refraction))
        return JawKind::fold;
    const bool is_cemented =
        surface.index_before[primary_wavelength] > 1 || surface.index_after[primary_wavelength] > 1;
    return is_cemented ? JawKind::face : JawKind::opening;
}

std::string jaw_help(const Jaw& jaw, Eye eye) {
    std::string text = fmt::format("{}: {:.1f} mm clear in this section.", jaw.name,
                                   glm::distance(jaw.above, jaw.below));
    if (jaw.loss.share < 0.001) return text + " It takes no light.";
    return text
           + fmt::format(
               " {} up to {:.0f} % of the light for the {} eye where it is most: share of "
               "the objective's rays that end here, counted by tracing.",
               jaw.loss.is_leak ? "Leaks" : "Takes", 100 * jaw.loss.share, name_of(eye));
}

struct TrackMaker {
    const Setup& setup;
    const Report& report;
    const EyePath& path;
    UnfoldedAxis axis;
    glm::dvec2 across;

    void add_jaws(EyeTrack& track) const {
        const std::size_t first = last_telescope_surface(path);
        for (std::size_t i = first; i < path.surfaces.size(); ++i) {
            const PlacedSurface& surface = path.surfaces[i];
            if (surface.kind == SurfaceKind::obstruction) continue;
            const auto section = section_of(surface, axis.before[i], across);
            if (!section) continue;
            Jaw jaw;
            jaw.part = surface.part;
            jaw.surface = i;
            jaw.kind = jaw_kind(path, i, *section);
            jaw.above = section->above;
            jaw.below = section->below;
            jaw.loss = loss_at(report.clipping_of(path.eye), i);
            jaw.focal_length = surface.focal_length[primary_wavelength];
            jaw.name = setup.parts[surface.part].name + ": " + surface.name;
            jaw.help = jaw_help(jaw, path.eye);
            track.jaws.push_back(std::move(jaw));
        }
        for (std::size_t i = 1; i < track.jaws.size(); ++i)
            add_wall(track, track.jaws[i - 1], track.jaws[i]);
    }

    static void add_wall(EyeTrack& track, const Jaw& a, const Jaw& b) {
        const bool is_tube = a.kind == JawKind::opening && b.kind == JawKind::opening
                             && a.part == b.part && std::abs(a.above.y - b.above.y) < same_place
                             && std::abs(a.below.y - b.below.y) < same_place;
        if (is_tube) track.walls.push_back({a.part, a.above.x, b.above.x, a.above.y, a.below.y});
    }

    void add_glass(EyeTrack& track) const {
        double place = rear_face_place(path, track.stop);
        for (const AxialStep& step : path.steps) {
            const double index = step.index[primary_wavelength];
            const double from = place;
            place += step.length;
            if (index <= 1 || step.length <= 0) continue;
            auto& glass = track.glass;
            const bool goes_on = !glass.empty() && glass.back().part == step.part
                                 && glass.back().index == index
                                 && std::abs(glass.back().to - from) < same_place;
            if (!goes_on) glass.push_back({step.part, from, from, 0, 0, index, 0, 0, {}, {}});
            glass.back().to = place;
            glass.back().length += step.length;
            glass.back().reduced += step.reduced();
        }
        for (GlassBlock& block : track.glass)
            finish(block, track.jaws);
    }

    void finish(GlassBlock& block, const std::vector<Jaw>& jaws) const {
        block.above = std::numeric_limits<double>::infinity();
        block.below = -block.above;
        for (const Jaw& jaw : jaws) {
            const bool is_end = jaw.kind == JawKind::face
                                && (std::abs(jaw.above.x - block.from) < same_place
                                    || std::abs(jaw.above.x - block.to) < same_place);
            if (!is_end || jaw.part != block.part) continue;
            block.above = std::min(block.above, jaw.above.y);
            block.below = std::max(block.below, jaw.below.y);
        }
        if (std::isinf(block.above)) {  // faces without an edge, or slightly off their place
            block.above = report.train.objective_radius / 4;
            block.below = -block.above;
        }
        block.label = fmt::format("{:.1f} → {:.1f} mm", block.length, block.reduced);
        block.help = fmt::format(
            "{}: {:.1f} mm of glass of index {:.4f} at 546 nm count as {:.1f} mm of light path: "
            "length over index, t / n (W. J. Smith, Modern Optical Engineering, plane plates). The "
            "outlined length is real, the filled one counts.",
            setup.parts[block.part].name, block.length, block.index, block.reduced);
    }

    [[nodiscard]] FocusMark focus_mark(double stop) const {
        FocusMark mark;
        const double real = report.image_behind_stop[side_of(path.eye)].value;
        mark.real = axis_place_near_stop(path, stop, std::min(real, farthest_image));
        mark.wanted = axis_place_near_stop(path, stop, path.wanted_image);
        const Millimetres gap = report.gap(path.eye);
        mark.gap = gap.value;
        mark.is_in_focus = is_in_focus(report, path.eye);
        mark.text = mark.is_in_focus ? "in focus" : gap_text(gap);
        mark.help = fmt::format("{}: the image (diamond) falls {:.1f} mm {} where this eye "
                                "wants it. Counted in air: "
                                "back focus less the drawtube and all light paths, through every "
                                "lens; in glass the same "
                                "gap is drawn longer by its index.",
                                title_of(path.eye), abs(gap).value,
                                gap >= Millimetres{} ? "before" : "behind");
        return mark;
    }
};

}  // namespace

double rear_face_place(const EyePath& path, double stop) {
    for (const AxialStep& step : path.steps)
        stop -= step.length;
    return stop;
}

EyeTrack unfolded_track(const Setup& setup, const Report& report, Eye eye) {
    const EyePath& path = report.train.path(eye);
    const std::size_t head = parts_with_role(setup, Role::splitter).front();
    TrackMaker maker{setup, report, path, UnfoldedAxis(path), {}};
    maker.across = folding_plane(path, maker.axis, head);
    EyeTrack track;
    track.eye = eye;
    track.name = title_of(eye);
    track.role = eye == Eye::left ? ColourRole::left_arm : ColourRole::right_arm;
    track.stop = maker.axis.behind.back().point(path.world_from_field_stop.origin).z;
    track.dividing = path.surfaces[dividing_surface(report.train)].axis_position;
    track.focus = maker.focus_mark(track.stop);
    const double end = std::max(track.stop, track.focus.real) + behind_the_end;
    const auto trace = [&] {
        track.cones = traced_cones(report.train, path, maker.axis, maker.across, end);
    };
    trace();
    constexpr double just_as_bright = 1e-3;
    if (track.cones[1].arriving() > track.cones[2].arriving() + just_as_bright) {
        maker.across = -maker.across;
        trace();
    }
    maker.add_jaws(track);
    maker.add_glass(track);
    return track;
}

}  // namespace beamfork
