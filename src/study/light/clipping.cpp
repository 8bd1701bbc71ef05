#include "study/light/clipping.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "study/light/few_ray_light.hpp"

namespace beamfork {

namespace {

bool is_obstructed(const EyePath& path, const BundleEnds& ends, std::size_t ray) {
    return ends.fate[ray] == RayFate::clipped
           && path.surfaces[ends.surface[ray]].kind == SurfaceKind::obstruction;
}

// One eye's path with its tracer made ready, and columns that serve one field point after the other.
struct LitPath {
    const Train& train;
    const EyePath& path;
    BundleTracer tracer;
    RayBundle bundle{};
    BundleEnds ends{};

    /// Until the next call.
    const BundleEnds& trace(FieldSlope slope, std::span<const glm::dvec2> pupil) {
        fill_bundle(bundle, train, slope, pupil);
        tracer.trace(bundle, ends);
        return ends;
    }
};

PointLight
light_point(LitPath& way, FieldSlope slope, glm::dvec2 at, const std::vector<glm::dvec2>& pupil) {
    PointLight found{{at, 0, {}}, 0};
    std::size_t reached = 0;
    std::size_t obstructed = 0;
    const BundleEnds& ends = way.trace(slope, pupil);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (ends.reached(i)) {
            ++reached;
        } else if (is_obstructed(way.path, ends, i)) {
            ++obstructed;
        } else {
            add_share(found.point.ends, {ends.surface[i], ends.fate[i] == RayFate::leaked, 1});
        }
    }
    const auto all = static_cast<double>(pupil.size());
    found.obstructed = static_cast<double>(obstructed) / all;
    const double open = obstructed < pupil.size() ? all - static_cast<double>(obstructed) : 1;
    found.point.relative = static_cast<double>(reached) / open;
    for (EndShare& end : found.point.ends)
        end.share /= open;
    return found;
}

LitRing gather_ring(double fraction, std::span<const LitPoint> points) {
    LitRing ring{fraction, 0, 1, {}};
    const auto count = static_cast<double>(points.size());
    for (const LitPoint& point : points) {
        ring.relative += point.relative / count;
        ring.lowest = std::min(ring.lowest, point.relative);
        for (EndShare end : point.ends) {
            end.share /= count;
            add_share(ring.ends, end);
        }
    }
    std::sort(ring.ends.begin(), ring.ends.end(),
              [](const EndShare& a, const EndShare& b) { return a.share > b.share; });
    return ring;
}

// Openings are convex and so is the beam: light is whole where the whole rim of the pupil passes.
bool whole_rim_passes(LitPath& way, FieldSlope slope, const std::vector<glm::dvec2>& pupil_rim) {
    const BundleEnds& ends = way.trace(slope, pupil_rim);
    return std::all_of(ends.fate.begin(), ends.fate.end(),
                       [](RayFate fate) { return fate == RayFate::reached; });
}

std::vector<glm::dvec2> rim_within() {
    auto pupil_rim = rim(48);
    // A hair inside, so that rounding does not put a ray outside the objective itself.
    for (glm::dvec2& place : pupil_rim)
        place *= 1 - 1e-9;
    return pupil_rim;
}

double fully_lit_fraction(LitPath& way, const FieldMap& map, double radius) {
    const auto pupil_rim = rim_within();
    const auto azimuths = rim(12);
    const auto is_lit = [&](double fraction) {
        return std::all_of(azimuths.begin(), azimuths.end(), [&](const glm::dvec2& azimuth) {
            return whole_rim_passes(way, map.slope_at(azimuth * (fraction * radius)), pupil_rim);
        });
    };
    if (is_lit(1)) return 1;
    if (!is_lit(0)) return 0;
    double lit = 0;
    double cut = 1;
    for (int step = 0; step < 12; ++step) {
        const double middle = (lit + cut) / 2;
        (is_lit(middle) ? lit : cut) = middle;
    }
    return lit;
}

// Field fractions between which the fully lit field ends. Rings found by few rays tell: they see every other azimuth
// in turn.
struct LitBracket {
    double lit = 0;
    double cut = 1;
};
LitBracket bracket_of(const std::vector<LitRing>& rings) {
    constexpr double cut_for_sure = 1e-3;
    std::size_t cut = 0;
    while (cut < rings.size() && rings[cut].lowest > 1 - cut_for_sure)
        ++cut;
    return {cut >= 2 ? rings[cut - 2].field_fraction : 0,
            cut < rings.size() ? rings[cut].field_fraction : 1};
}

// The same with fewer rays: one azimuth after the other is asked only whether it ends before those before it did. To
// within a thousandth of the field.
double fully_lit_fraction(LitPath& way, const FieldMap& map, double radius, LitBracket known) {
    const auto pupil_rim = rim_within();
    double shortest = known.cut;
    for (const glm::dvec2& azimuth : rim(12)) {
        const auto is_lit = [&](double fraction) {
            return whole_rim_passes(way, map.slope_at(azimuth * (fraction * radius)), pupil_rim);
        };
        if (is_lit(shortest)) continue;
        double lit = std::min(known.lit, shortest);
        if (!is_lit(lit)) {
            if (lit == 0 || !is_lit(0)) return 0;
            shortest = std::exchange(lit, 0);
        }
        while (shortest - lit > 1.0 / 1024) {
            const double middle = (lit + shortest) / 2;
            (is_lit(middle) ? lit : shortest) = middle;
        }
        shortest = lit;
    }
    return shortest;
}

// The places where light is looked at on one ring, in units of the field stop's radius. Every other ring is turned by
// half a step, so that six azimuths see as much as twelve.
std::vector<glm::dvec2> places_on_ring(int ring) {
    if (ring == 0) return {glm::dvec2{0}};
    const double fraction = static_cast<double>(ring) / lit_ring_count;
    std::vector<glm::dvec2> places;
    for (int i = 0; i < lit_azimuth_count; ++i) {
        const double turn = (i + (ring % 2) * 0.5) * 2 * std::numbers::pi / lit_azimuth_count;
        places.push_back(fraction * glm::dvec2{std::cos(turn), std::sin(turn)});
    }
    return places;
}

Millimetres working_diameter(const Train& train, double relative) {
    return {2 * train.objective_radius * std::sqrt(relative)};
}

// For field points that few rays do not describe: so many that the worst point stays well within half a percent.
constexpr int rays_where_few_fail = 4096;

std::vector<PointLight> light_points(LitPath& way,
                                     const FieldMap& map,
                                     double radius,
                                     std::span<const glm::dvec2> places,
                                     ClippingEffort effort) {
    std::vector<FieldSlope> slopes;
    slopes.reserve(places.size());
    for (const glm::dvec2& at : places)
        slopes.push_back(map.slope_at(at * radius));
    const bool is_few = effort.form == LightForm::few_rays;
    std::vector<std::optional<PointLight>> few(places.size());
    if (is_few) few = few_ray_light(way.train, way.path, places, slopes);
    std::vector<glm::dvec2> pupil;
    std::vector<PointLight> lights;
    lights.reserve(places.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (few[i]) {
            lights.push_back(*std::move(few[i]));
            continue;
        }
        if (pupil.empty()) pupil = sunflower(is_few ? rays_where_few_fail : effort.rays_per_point);
        lights.push_back(light_point(way, slopes[i], places[i], pupil));
    }
    return lights;
}

std::vector<glm::dvec2> places_on_all_rings() {
    std::vector<glm::dvec2> places;
    for (int ring = 0; ring <= lit_ring_count; ++ring) {
        for (const glm::dvec2& at : places_on_ring(ring))
            places.push_back(at);
    }
    return places;
}

std::vector<LitRing> gather_rings(std::span<const LitPoint> points) {
    std::vector<LitRing> rings;
    std::size_t first = 0;
    for (int ring = 0; ring <= lit_ring_count; ++ring) {
        const std::size_t count = ring == 0 ? 1 : lit_azimuth_count;
        rings.push_back(
            gather_ring(static_cast<double>(ring) / lit_ring_count, points.subspan(first, count)));
        first += count;
    }
    return rings;
}

}  // namespace

EyeClipping clipping(const Train& train, Eye eye, ClippingEffort effort) {
    const EyePath& path = train.path(eye);
    LitPath way{train, path, {path, primary_wavelength}};
    const FieldMap map = field_map(train, eye);
    EyeClipping result;
    result.eye = eye;
    const double radius = inner_radius(path.surfaces.back().aperture);
    result.field_stop = {2 * radius};
    auto lights = light_points(way, map, radius, places_on_all_rings(), effort);
    result.obstructed_share = lights.front().obstructed;
    for (PointLight& light : lights)
        result.points.push_back(std::move(light.point));
    result.rings = gather_rings(result.points);
    result.edge_relative = result.rings.back().relative;
    result.working_aperture = working_diameter(train, result.points.front().relative);
    const double lit = effort.form == LightForm::few_rays
                           ? fully_lit_fraction(way, map, radius, bracket_of(result.rings))
                           : fully_lit_fraction(way, map, radius);
    result.fully_illuminated_diameter = lit * result.field_stop;
    return result;
}

MiddleAndEdge middle_and_edge(const Train& train, Eye eye, ClippingEffort effort) {
    const EyePath& path = train.path(eye);
    LitPath way{train, path, {path, primary_wavelength}};
    const FieldMap map = field_map(train, eye);
    const double radius = inner_radius(path.surfaces.back().aperture);
    auto places = places_on_ring(0);
    const auto edge = places_on_ring(lit_ring_count);
    places.insert(places.end(), edge.begin(), edge.end());
    const auto lights = light_points(way, map, radius, places, effort);
    double sum = 0;
    for (std::size_t i = 1; i < lights.size(); ++i)
        sum += lights[i].point.relative;
    const double middle = lights.front().point.relative;
    return {middle, sum / static_cast<double>(edge.size()), working_diameter(train, middle)};
}

Millimetres fully_illuminated_diameter(const Train& train, Eye eye) {
    const EyePath& path = train.path(eye);
    LitPath way{train, path, {path, primary_wavelength}};
    const double radius = inner_radius(path.surfaces.back().aperture);
    return {2 * radius * fully_lit_fraction(way, field_map(train, eye), radius)};
}

namespace {

// Around one ring, between its two nearest azimuths.
double on_ring(const EyeClipping& clipping, int ring, double turn) {
    if (ring == 0) return clipping.points.front().relative;
    const double step = turn * lit_azimuth_count / (2 * std::numbers::pi) - (ring % 2) * 0.5;
    const double low = std::floor(step);
    const auto point = [&](double index) {
        const int azimuth =
            ((static_cast<int>(index) % lit_azimuth_count) + lit_azimuth_count) % lit_azimuth_count;
        const int place = 1 + (ring - 1) * lit_azimuth_count + azimuth;
        return clipping.points[static_cast<std::size_t>(place)].relative;
    };
    return std::lerp(point(low), point(low + 1), step - low);
}

}  // namespace

double relative_at(const EyeClipping& clipping, glm::dvec2 at) {
    const double place = std::min(1.0, glm::length(at)) * lit_ring_count;
    const int inner = std::min(static_cast<int>(place), lit_ring_count - 1);
    const double turn = std::atan2(at.y, at.x);
    return std::lerp(on_ring(clipping, inner, turn), on_ring(clipping, inner + 1, turn),
                     place - inner);
}

std::string end_name(const Setup& setup, const EyePath& path, const EndShare& end) {
    const PlacedSurface& surface = path.surfaces.at(end.surface);
    return setup.parts.at(surface.part).name + ": " + (end.is_leak ? "leak at " : "")
           + surface.name;
}

}  // namespace beamfork
