#include "scene/handles/dimension.hpp"

#include <algorithm>
#include <cmath>

#include "parts/shifter.hpp"
#include "scene/handles/handle.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double shows_from_mm = 0.05;

const PlacedPart* placed_left(const Report& report, std::size_t part) {
    for (const PlacedPart& placed : report.train.placed) {
        if (placed.part == part && placed.eye == Eye::left) return &placed;
    }
    return nullptr;
}

std::string drawn_length(double length) { return fmt::format("{:.1f} mm", length); }

Dimension between(const Point& from, const Point& to, double clear, std::string text) {
    Dimension dimension;
    dimension.from = from;
    dimension.to = to;
    dimension.clear = clear;
    dimension.text = std::move(text);
    return dimension;
}

Dimension across(const Point& middle, const Direction& axis, double half, std::string text) {
    Dimension dimension = between(middle, middle + axis, half, std::move(text));
    dimension.kind = DimensionKind::across;
    return dimension;
}

bool can_be_measured(const PlacedSurface& surface) {
    return surface.kind == SurfaceKind::stop || surface.kind == SurfaceKind::refraction
           || surface.kind == SurfaceKind::thin_lens || surface.kind == SurfaceKind::objective;
}

// The narrowest of the part's openings; folds stand at a slant and are left out.
const PlacedSurface* narrowest_opening(const Report& report, std::size_t part) {
    const PlacedSurface* found = nullptr;
    for (const PlacedSurface& surface : report.train.path(Eye::left).surfaces) {
        if (surface.part != part || !can_be_measured(surface)) continue;
        const double radius = inner_radius(surface.aperture);
        if (!std::isfinite(radius)) continue;
        if (found == nullptr || radius < inner_radius(found->aperture)) found = &surface;
    }
    return found;
}

void add_opening(std::vector<Dimension>& all, const Report& report, std::size_t part) {
    const PlacedSurface* opening = narrowest_opening(report, part);
    if (opening == nullptr) return;
    const double radius = inner_radius(opening->aperture);
    const bool is_round = std::holds_alternative<Circle>(opening->aperture);
    const std::string width = drawn_length(2 * radius);
    all.push_back(across(opening->world_from_surface.origin, opening->world_from_surface.z(),
                         radius, (is_round ? "ø " + width : width + " wide") + " clear"));
}

// Along the light in, and where the light turns, from there along the light out.
void add_lengths(std::vector<Dimension>& all, const PlacedPart& placed, double clear) {
    const Point& from = placed.world_from_part.origin;
    const Point& to = placed.world_from_exit.origin;
    const Direction in = placed.world_from_part.z();
    const Direction out = placed.world_from_exit.z();
    const double cosine = glm::dot(in, out);
    const double slant = 1 - cosine * cosine;
    std::vector<Point> corners{from, to};
    if (slant > 1e-6) {  // the point of the entry axis that is nearest to the exit axis
        const double along = (glm::dot(to - from, in) - cosine * glm::dot(to - from, out)) / slant;
        corners.insert(corners.begin() + 1, from + along * in);
    } else if (glm::length(glm::cross(to - from, in)) > shows_from_mm) {
        return;  // leaves beside where it enters: no length along one line
    }
    for (std::size_t i = 1; i < corners.size(); ++i) {
        const double length = glm::distance(corners[i - 1], corners[i]);
        if (length < shows_from_mm) continue;
        all.push_back(between(corners[i - 1], corners[i], clear, drawn_length(length)));
    }
}

// Beyond the scale along the drawtube (drawtube_scale.cpp), which stands 16 mm off its wall.
void add_travel(std::vector<Dimension>& all, const Handle& drawtube, const FocusBudget& budget) {
    const double clear = drawtube.radius + 12;
    const Point in = drawtube.line.at(0);
    const Point now = drawtube.place();
    const Point out = drawtube.line.at(budget.travel.value);
    if (budget.drawtube.value > shows_from_mm)
        all.push_back(between(in, now, clear, drawn_length(budget.drawtube.value) + " in"));
    if (budget.travel.value - budget.drawtube.value > shows_from_mm)
        all.push_back(between(now, out, clear,
                              drawn_length((budget.travel - budget.drawtube).value) + " out"));
    if (all.size() == 2) all.front().number_before = true;
    for (Dimension& dimension : all)
        dimension.free_side = drawtube.free_side;
}

void add_eye_distance(std::vector<Dimension>& all, const Report& report) {
    const Pose& left = report.train.path(Eye::left).world_from_field_stop;
    const Pose& right = report.train.path(Eye::right).world_from_field_stop;
    constexpr double behind_field_stops = 30;  // near the eye lenses
    const Point on{0, 0, behind_field_stops};
    Dimension dimension =
        between(left.point_out(on), right.point_out(on), 0,
                drawn_length(glm::distance(left.origin, right.origin)) + " between the axes");
    dimension.free_side = left.z();
    all.push_back(std::move(dimension));
}

double body_radius(const Report& report, std::size_t part) {
    double radius = 4;
    for (const PlacedSurface& surface : report.train.path(Eye::left).surfaces) {
        if (surface.part != part || !can_be_measured(surface)) continue;
        const double inner = inner_radius(surface.aperture);
        if (std::isfinite(inner)) radius = std::max(radius, inner);
    }
    return radius + 4;
}

// Behind the entry face of a shifter, where its lens is laid out; 0 for other parts.
double shifter_lens_place(const Setup& setup, const Train& train, std::size_t part) {
    if (!setup.parts[part].body.is<Shifter>()) return 0;
    const auto room = std::find_if(train.lens_rooms.begin(), train.lens_rooms.end(),
                                   [&](const LensRoom& one) { return one.part == part; });
    return room == train.lens_rooms.end() ? 0 : room->placed();
}

}  // namespace

std::vector<Dimension> part_dimensions(const Setup& setup, const Report& report, std::size_t part) {
    const PlacedPart* placed = placed_left(report, part);
    if (placed == nullptr) return {};
    std::vector<Dimension> all;
    switch (role_of(setup.parts[part])) {
    case Role::focuser:
        for (const Handle& drawtube : handles_of(setup, report, part))
            add_travel(all, drawtube, report.budget);
        break;
    case Role::chain: {
        add_lengths(all, *placed, body_radius(report, part));
        const double offset = shifter_lens_place(setup, report.train, part);
        if (std::abs(offset) > shows_from_mm)
            all.push_back(between(
                placed->world_from_part.origin, placed->world_from_part.point_out({0, 0, offset}),
                body_radius(report, part), drawn_length(offset) + " to the lens"));
        break;
    }
    case Role::splitter: add_eye_distance(all, report); break;
    case Role::telescope:
        return {across({0, 0, report.train.pupil_plane}, {0, 0, 1}, report.train.objective_radius,
                       "ø " + drawn_length(2 * report.train.objective_radius) + " aperture")};
    case Role::eyepiece:
    case Role::observer:
    case Role::target: break;
    }
    add_opening(all, report, part);
    return all;
}

}  // namespace beamfork
