#include "study/light/clipping.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>
#include <utility>

#include "study/light/fully_lit.hpp"
#include "study/light/lit_ring.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

namespace {

Millimetres working_diameter(const Train& train, double relative) {
    return {2 * train.objective_radius * std::sqrt(relative)};
}

std::vector<int> all_rings() {
    std::vector<int> rings(lit_ring_count + 1);
    std::iota(rings.begin(), rings.end(), 0);
    return rings;
}

}  // namespace

EyeClipping clipping(const Train& train, Eye eye, ClippingEffort effort) {
    LitPath way(train, eye);
    EyeClipping result;
    result.eye = eye;
    result.field_stop = {2 * way.radius};
    const double fully_lit = fully_lit_fraction(way);
    result.fully_illuminated_diameter = fully_lit * result.field_stop;
    RingLight light = ring_light(way, all_rings(), fully_lit, effort);
    result.obstructed_share = light.obstructed;
    result.points = std::move(light.points);
    result.rings = std::move(light.rings);
    result.edge_relative = result.rings.back().relative;
    result.working_aperture = working_diameter(train, result.points.front().relative);
    return result;
}

MiddleAndEdge middle_and_edge(const Train& train, Eye eye, ClippingEffort effort) {
    LitPath way(train, eye);
    constexpr double nowhere = -1;  // nobody has looked
    const RingLight light = ring_light(way, std::array{0, lit_ring_count}, nowhere, effort);
    const double middle = light.rings.front().relative;
    return {middle, light.rings.back().relative, working_diameter(train, middle)};
}

Millimetres fully_illuminated_diameter(const Train& train, Eye eye) {
    LitPath way(train, eye);
    return {2 * way.radius * fully_lit_fraction(way)};
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
