#include "trace/course_reader.hpp"

namespace beamfork {

// The faces of a roof stand side by side in the path and are met in either order.
std::size_t CourseReader::surface_at(std::size_t step, std::size_t lane) {
    const auto& surfaces = path_.surfaces;
    if (!surfaces[step].is_roof) return step;
    std::size_t first = step;
    while (first > 0 && surfaces[first - 1].is_roof)
        --first;
    const bool is_second = (step - first) % 2 == 1;
    const std::size_t pair = is_second ? step - 1 : step;
    const bool is_swapped =
        trail_.column(pair + 1, RayTrail::t)[lane] < trail_.column(pair, RayTrail::t)[lane];
    return pair + (is_second != is_swapped ? 1 : 0);
}

Ray CourseReader::arrival(std::size_t surface, std::size_t lane) {
    const auto number = [&](RayTrail::Number which) { return trail_.column(surface, which)[lane]; };
    const Isometry& straight = straight_.straight_from_world[surface];
    const Point at{number(RayTrail::x), number(RayTrail::y), number(RayTrail::z)};
    const Direction along{number(RayTrail::kx), number(RayTrail::ky), number(RayTrail::kz)};
    return {straight.point_back(at), glm::normalize(straight.direction_back(along)), 0};
}

RayCourse CourseReader::course(std::size_t lane, const RayEnd& told) {
    RayCourse course{told, {told.ray.origin}};
    for (std::size_t step = 0; step < path_.surfaces.size(); ++step) {
        const std::size_t surface = surface_at(step, lane);
        const bool is_end = surface == told.surface;
        if (!is_end && is_opening(path_.surfaces[surface].kind)) continue;
        const Ray arrived = arrival(surface, lane);
        course.corners.push_back(arrived.origin);
        if (!is_end) continue;
        course.end.ray = arrived;
        break;
    }
    return course;
}

}  // namespace beamfork
