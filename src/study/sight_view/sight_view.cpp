#include "study/sight_view/sight_view.hpp"

#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "study/findings/report.hpp"
#include "study/image/coma_correction.hpp"
#include "study/image/glass_correction.hpp"
#include "study/image/white_light.hpp"
#include "train/telescope.hpp"

namespace beamfork {

namespace {

constexpr int rays_per_spread = 240;

// Traces to the plane on which the eye is focused, in the field stop's frame.
struct FocusedPlane {
    const Train& train;
    EyePath path;
    EyePath open;
    double behind_stop = 0;
    double by_hand = 0;   // a refocus that moves nothing sideways
    double entering = 1;  // of the aperture's radius: what enters the eye's pupil
    std::vector<GlassCorrection> glass;
    std::vector<ComaCorrection> coma;

    [[nodiscard]] glm::dvec2 landing(const WavefrontRay& ray) const {
        return glm::dvec2(ray.at) + (behind_stop + by_hand - ray.at.z) * slope(ray);
    }
    [[nodiscard]] static glm::dvec2 slope(const WavefrontRay& ray) {
        return glm::dvec2(ray.along) / ray.along.z;
    }
    [[nodiscard]] Wavefront middle_ray(FieldSlope slope) const {
        const std::array<glm::dvec2, 1> middle{glm::dvec2{0}};
        return trace_wavefront(train, open, slope, middle, primary_wavelength);
    }
};

FocusedPlane plane_of(const Setup& setup, const Train& train, EyePath path, double behind_stop) {
    EyePath open = without_stops(path);
    auto glass = glass_corrections(setup, path);
    auto coma = coma_corrections(setup, path);
    return {.train = train,
            .path = std::move(path),
            .open = std::move(open),
            .behind_stop = behind_stop,
            .glass = std::move(glass),
            .coma = std::move(coma)};
}

void map_chief_rays(EyeSight& sight, const FocusedPlane& plane) {
    const ChiefMap map = chief_map(plane.train, plane.open, plane.behind_stop);
    sight.axis_image = map.axis;
    sight.stop_from_slope = map.place_from_slope;
}

Spread spread_at(const EyeSight& sight, const FocusedPlane& plane, glm::dvec2 stop) {
    Spread spread;
    const FieldSlope slope = glm::inverse(sight.stop_from_slope) * (stop - sight.axis_image);
    const Wavefront chief = plane.middle_ray(slope);
    auto pupil = sunflower(rays_per_spread);
    for (glm::dvec2& place : pupil)
        place *= plane.entering;
    const glm::dvec2 looked_along =
        chief.rays.empty() ? slope : FocusedPlane::slope(chief.rays.front());
    Colours colours;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        colours[w] = trace_wavefront(plane.train, plane.path, slope, pupil, w);
        if (chief.rays.empty()) continue;
        correct(colours[w], plane.glass, w, chief.rays.front().along);
        take_coma(colours[w], plane.coma, plane.train, slope, chief.rays.front().along);
    }
    keep_common_rays(colours);
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        for (const WavefrontRay& ray : colours[w].rays)
            spread.landings[w].push_back(plane.landing(ray) - stop - plane.by_hand * looked_along);
    }
    for (const WavefrontRay& ray : colours[primary_wavelength].rays)
        spread.slopes.push_back(FocusedPlane::slope(ray) - looked_along);
    return spread;
}

void trace_spreads(EyeSight& sight, FocusedPlane& plane, Millimetres eye_pupil) {
    plane.entering =
        std::min(1.0, eye_pupil.value * sight.magnification() / (2 * plane.train.objective_radius));
    const double r = node_radius * sight.stop_radius.value;
    const std::array<glm::dvec2, 5> places{{{0, 0}, {r, 0}, {0, r}, {-r, 0}, {0, -r}}};
    for (std::size_t node = 0; node < places.size(); ++node)
        sight.nodes[node] = spread_at(sight, plane, places[node]);
}

// What an eye gets through an aperture that works, at a magnification: how much of it the eye takes in, how bright it is.
struct LightGrasp {
    Millimetres aperture;  // diameter
    double magnification = 0;
};
void judge_light(EyeSight& sight, const Setup& setup, const Report& report, const LightGrasp& at) {
    const auto& observer = part_as<Observer>(setup, report.train.choice.observer);
    const double magnification = at.magnification;
    constexpr Millimetres least{1e-3};  // nothing is divided by a dark eye's aperture
    sight.aperture = std::max(least, std::min(at.aperture, observer.eye_pupil * magnification));
    const TelescopeFacts telescope = telescope_of(setup);
    sight.obstruction = std::min(0.9, telescope.obstruction / sight.aperture);
    const double hidden = telescope.obstruction / telescope.aperture;
    sight.light *= (1 - sight.obstruction * sight.obstruction)
                   * (1 - telescope.vane_share / (1 - hidden * hidden));
    const Millimetres exit_pupil = sight.aperture / magnification;
    const double filled = exit_pupil / observer.eye_pupil;
    sight.surface = sight.light * filled * filled;
    sight.limiting = limiting_magnitude(sight.aperture, observer.eye_pupil, sight.light);
}

EyeSight with_eyepiece(const Setup& setup, const Report& report) {
    const auto& eyepiece = part_as<EyepiecePair>(setup, report.train.choice.eyepiece);
    EyeSight sight;
    sight.stop_radius = eyepiece.field_stop / 2;
    sight.eyepiece_focal_length = eyepiece.focal_length;
    sight.apparent_field = eyepiece.apparent_field;
    return sight;
}

// The telescope's own surfaces and a plane where its image of the target lies.
EyePath telescope_alone(const Setup& setup, const Train& train) {
    const EyePath& whole = train.path(Eye::left);
    const std::size_t telescope = parts_with_role(setup, Role::telescope).front();
    EyePath alone;
    alone.object_distance = whole.object_distance;
    for (const PlacedSurface& surface : whole.surfaces) {
        if (surface.part == telescope) alone.surfaces.push_back(surface);
    }
    for (const PlacedPart& placed : train.placed) {
        if (placed.part == telescope)
            alone.world_from_field_stop =
                placed.world_from_exit * translation(0, 0, train.back_focus);
    }
    PlacedSurface image;
    image.name = "field stop";
    image.world_from_surface = alone.world_from_field_stop;
    alone.surfaces.push_back(image);
    return alone;
}

// How far the glass brings the sharpest image from the paraxial green one, for which the drawtube is set: a hand on the
// focuser finds it, where there is an image.
Millimetres focused_by_hand(const Report& report, Eye eye) {
    const std::size_t side = side_of(eye);
    const EyeImage& image = report.image_quality[side];
    if (!image.axis.is_formed) return {};
    return image.axis.seen_focus - image.bare_focus - report.image_behind_stop[side];
}

}  // namespace

double EyeSight::magnification() const {
    return std::sqrt(std::abs(glm::determinant(stop_from_slope))) / eyepiece_focal_length.value;
}

double limiting_magnitude(Millimetres aperture, Millimetres eye_pupil, double light) {
    return 6.0 + 5 * std::log10(aperture / eye_pupil) + 2.5 * std::log10(light);
}

EyeSight eye_sight(const Setup& setup, const Report& report, Eye eye, SightDetail detail) {
    EyeSight sight = with_eyepiece(setup, report);
    const EyePath& path = report.train.path(eye);
    FocusedPlane plane = plane_of(setup, report.train, path, path.wanted_image);
    plane.by_hand = focused_by_hand(report, eye).value;
    map_chief_rays(sight, plane);
    if (detail == SightDetail::whole)
        trace_spreads(sight, plane,
                      part_as<Observer>(setup, report.train.choice.observer).eye_pupil);
    const std::size_t side = side_of(eye);
    sight.focus.front() = report.image_quality[side].blue_shift.value;
    sight.focus.back() = report.image_quality[side].red_shift.value;
    sight.light = report.brightness.eyes[side].throughput;
    sight.lit = report.clipping_of(eye);
    // As in focus, like all that is told of light: a blurred view's own scale is another.
    judge_light(sight, setup, report,
                {sight.lit.working_aperture, report.magnification.magnification});
    sight.surface = report.brightness.eyes[side].surface_brightness;
    return sight;
}

namespace {

// Where green light of the field's middle comes together best, behind where it was traced to, mm: a hand on the focuser finds
// it with one eye as with two. The least mean square of the rays' distances.
double closest_focus(const Spread& middle) {
    const auto& landings = middle.landings[primary_wavelength];
    double towards = 0;
    double spread = 0;
    for (std::size_t i = 0; i < middle.slopes.size(); ++i) {
        towards -= glm::dot(landings[i], middle.slopes[i]);
        spread += glm::dot(middle.slopes[i], middle.slopes[i]);
    }
    return spread > 0 ? towards / spread : 0;
}

}  // namespace

EyeSight one_eye_sight(const Setup& setup, const Report& report, SightDetail detail) {
    EyeSight sight = with_eyepiece(setup, report);
    FocusedPlane plane = plane_of(setup, report.train, telescope_alone(setup, report.train), 0);
    map_chief_rays(sight, plane);
    if (detail == SightDetail::whole) {
        const Millimetres pupil = part_as<Observer>(setup, report.train.choice.observer).eye_pupil;
        trace_spreads(sight, plane, pupil);
        plane.by_hand = closest_focus(sight.nodes[0]);
        trace_spreads(sight, plane, pupil);
    }
    sight.focus = colour_of_objective(plane.open);
    sight.lit = report.clipping_of(Eye::left);
    for (LitPoint& point : sight.lit.points)
        point.relative = 1;
    sight.light = report.brightness.without_head;
    judge_light(sight, setup, report, {telescope_of(setup).aperture, sight.magnification()});
    return sight;
}

namespace {

// How much less out of focus than it arrives the eye notices each of white_lines to be, mm behind the field stop.
std::array<double, white_lines.size()> undone_by_eye(const EyeSight& sight) {
    std::array<double, white_lines.size()> undone{};
    for (std::size_t line = 0; line < white_lines.size(); ++line) {
        double arrives = 0;
        for (std::size_t w = 0; w < wavelength_count; ++w)
            arrives += white_shares()[line][w] * sight.focus[w];
        const double wanted =
            eye_wants_behind_green(white_lines[line].wavelength, sight.eyepiece_focal_length).value;
        const double off = arrives - wanted;
        undone[line] =
            arrives - std::copysign(std::max(0.0, std::abs(off) - std::abs(wanted)), off);
    }
    return undone;
}

}  // namespace

std::vector<glm::dvec2>
noticed_spread(const EyeSight& sight, const Spread& node, std::span<const std::size_t> lines) {
    const auto undone = undone_by_eye(sight);
    std::vector<glm::dvec2> places;
    places.reserve(node.slopes.size());
    for (std::size_t i = 0; i < node.slopes.size(); ++i) {
        const std::size_t line = lines[i % lines.size()];
        glm::dvec2 place = undone[line] * node.slopes[i];
        for (std::size_t w = 0; w < wavelength_count; ++w)
            place += white_shares()[line][w] * node[w][i];
        places.push_back(place);
    }
    return places;
}

glm::dvec2 stop_of_sky(const EyeSight& sight, glm::dvec2 sky) {
    // Light from the right travels to the left, and from above downwards.
    return sight.stop_from_slope * -sky + sight.axis_image;
}

glm::dvec2 sky_of_stop(const EyeSight& sight, glm::dvec2 stop) {
    return -(glm::inverse(sight.stop_from_slope) * (stop - sight.axis_image));
}

namespace {

// How much farther out than p / f the field stop's edge is seen, as a share; bounded so that the law rises.
double stretch_at_edge(const EyeSight& sight) {
    const double plain = sight.stop_radius / sight.eyepiece_focal_length;
    return std::clamp(to_radians(sight.apparent_field).value / 2 / plain - 1, -0.3, 1.0);
}

}  // namespace

glm::dvec2 apparent_of_stop(const EyeSight& sight, glm::dvec2 stop) {
    const double share = glm::dot(stop, stop) / (sight.stop_radius.value * sight.stop_radius.value);
    return stop / sight.eyepiece_focal_length.value * (1 + stretch_at_edge(sight) * share);
}

glm::dvec2 stop_of_apparent(const EyeSight& sight, glm::dvec2 apparent) {
    const double angle = glm::length(apparent);
    if (angle == 0) return glm::dvec2{0};
    const double stretch = stretch_at_edge(sight);
    const double plain = sight.stop_radius / sight.eyepiece_focal_length;
    const double wanted = angle / plain;
    double share = std::min(wanted, 1.0);  // of the stop's radius; Newton's method on a cubic
    for (int i = 0; i < 8; ++i) {
        const double off = share * (1 + stretch * share * share) - wanted;
        share -= off / (1 + 3 * stretch * share * share);
    }
    return apparent / angle * (share * sight.stop_radius.value);
}

}  // namespace beamfork
