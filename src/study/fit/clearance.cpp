#include "study/fit/clearance.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

namespace {

constexpr double wall = 2;       // mm of a nose or barrel outside its opening
constexpr double half_cell = 2;  // mm of a lens cell to each side of the lens
constexpr double cell_wall =
    1.5;  // mm of a lens cell around the lens: narrower ones slide into a nose
constexpr double rounding = 1e-6;

bool is_opening(const PlacedSurface& surface) {
    return surface.kind == SurfaceKind::stop || surface.kind == SurfaceKind::thin_lens;
}

double radius_of(const PlacedSurface& surface) {
    const double radius = inner_radius(surface.aperture);
    return std::isfinite(radius) ? radius : 0;
}

// How much nearer the edge of a tilted mirror stands than its middle, for an end of that radius.
double tilt_reach(const PlacedSurface& face, const Direction& along, double radius) {
    if (face.kind != SurfaceKind::mirror) return 0;
    const double cosine = std::abs(glm::dot(face.world_from_surface.z(), along));
    const double tangent = std::sqrt(std::max(0.0, 1 - cosine * cosine)) / std::max(cosine, 0.1);
    return std::min(radius, radius_of(face)) * tangent;
}

void keep_tightest(std::vector<Clearance>& found, Clearance one) {
    const auto same = std::find_if(found.begin(), found.end(),
                                   [&](const Clearance& other) { return other.part == one.part; });
    if (same == found.end()) {
        found.push_back(std::move(one));
    } else if (one.room < same->room) {
        *same = std::move(one);
    }
}

// A wide lens cell standing where the nose of a part behind it wants to be.
bool blocks(const PlacedSurface& lens, const PlacedSurface& end) {
    return lens.part < end.part && end.kind == SurfaceKind::stop
           && radius_of(lens) + cell_wall > radius_of(end) + rounding;
}

// Lens cells against the ends of parts behind them, all of one air space.
void check_cells(std::vector<Clearance>& found, const std::vector<const PlacedSurface*>& openings) {
    for (const PlacedSurface* lens : openings) {
        if (lens->kind != SurfaceKind::thin_lens) continue;
        for (const PlacedSurface* end : openings) {
            if (!blocks(*lens, *end)) continue;
            keep_tightest(found,
                          {end->part, end->name, lens->part, lens->name,
                           Millimetres{end->axis_position - lens->axis_position - half_cell}});
        }
    }
}

}  // namespace

std::vector<Clearance> clearances(const EyePath& path) {
    std::vector<Clearance> found;
    const PlacedSurface* face = nullptr;
    std::vector<const PlacedSurface*> in_this_air;
    for (const PlacedSurface& surface : path.surfaces) {
        const bool is_before_it = face != nullptr && surface.axis_position < face->axis_position;
        // Everything stands behind the objective: worth telling only where it does not.
        const bool counts = face != nullptr && surface.part != face->part
                            && (face->kind != SurfaceKind::objective || is_before_it);
        if (counts) {
            const double reach =
                is_opening(surface)
                    ? tilt_reach(*face, surface.world_from_surface.z(), radius_of(surface) + wall)
                    : 0;
            keep_tightest(found,
                          {surface.part, surface.name, face->part, face->name,
                           Millimetres{surface.axis_position - face->axis_position - reach}});
        }
        if (is_opening(surface)) {
            in_this_air.push_back(&surface);
        } else {
            check_cells(found, in_this_air);
            face = &surface;
            in_this_air.clear();
        }
    }
    check_cells(found, in_this_air);
    return found;
}

bool hangs_on_unstated(const Train& train, const Clearance& one) {
    return train.unstated(one.other).last_glass;
}

std::optional<Clearance> tightest(const Train& train) {
    std::optional<Clearance> least;
    for (const EyePath& path : train.paths) {
        for (const Clearance& one : clearances(path)) {
            if (!least || one.room < least->room) least = one;
        }
    }
    return least;
}

}  // namespace beamfork
