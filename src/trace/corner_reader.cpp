#include "trace/corner_reader.hpp"

namespace beamfork {

// The faces of a roof are met in either order.
std::size_t CornerReader::surface_at(std::size_t step, std::size_t lane) {
    if (!path_.surfaces[step].is_roof) return step;
    const std::size_t pair = first_of_roof(path_, step);
    const bool is_swapped =
        trail_.column(pair + 1, RayTrail::t)[lane] < trail_.column(pair, RayTrail::t)[lane];
    return pair + ((step != pair) != is_swapped ? 1 : 0);
}

Ray CornerReader::arrival(std::size_t surface, std::size_t lane, const RayCorner& before) {
    const auto number = [&](RayTrail::Number which) { return trail_.column(surface, which)[lane]; };
    const Isometry& straight = straight_.straight_from_world[surface];
    const Point at =
        straight.point_back({number(RayTrail::x), number(RayTrail::y), number(RayTrail::z)});
    const Direction along{number(RayTrail::kx), number(RayTrail::ky), number(RayTrail::kz)};
    const Direction direction = glm::normalize(straight.direction_back(along));
    const double stretch = glm::dot(at - before.leaves, direction);
    const double index = path_.surfaces[surface].index_before[wavelength_];
    return {at, direction, before.path_out + index * stretch};
}

// An ideal lens moves place and path of what it turns, an ideal plate the path; any other surface leaves both.
RayCorner CornerReader::turn(std::size_t surface, const Ray& arrived) const {
    RayCorner corner{surface, arrived.origin, arrived.origin, arrived.path, arrived.path};
    const PlacedSurface& placed = path_.surfaces[surface];
    if (placed.kind != SurfaceKind::objective && placed.kind != SurfaceKind::thin_lens
        && placed.kind != SurfaceKind::phase_plate)
        return corner;
    const Pose& pose = placed.world_from_surface;
    const auto leaving = interact(
        placed, {pose.point_in(arrived.origin), pose.direction_in(arrived.direction), arrived.path},
        wavelength_, path_.object_distance);
    if (!leaving) return corner;
    corner.leaves = pose.point_out(leaving->at);
    corner.path_out = leaving->path;
    return corner;
}

TracedRay
CornerReader::read(std::size_t lane, LaneEnd told, const RayCorner& first, std::size_t from) {
    TracedRay traced{{told.fate, told.surface, {}}, {}};
    traced.corners.reserve(path_.surfaces.size() + 1 - from);
    traced.corners.push_back(first);
    for (std::size_t step = from; step < path_.surfaces.size(); ++step) {
        const std::size_t surface = surface_at(step, lane);
        const bool is_end = surface == told.surface;
        if (!is_end && is_opening(path_.surfaces[surface].kind)) continue;
        const Ray arrived = arrival(surface, lane, traced.corners.back());
        traced.corners.push_back(turn(surface, arrived));
        if (!is_end) continue;
        traced.corners.back().leaves = arrived.origin;
        traced.corners.back().path_out = arrived.path;
        traced.end.ray = arrived;
        break;
    }
    return traced;
}

}  // namespace beamfork
