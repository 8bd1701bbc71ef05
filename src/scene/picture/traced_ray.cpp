#include "scene/picture/traced_ray.hpp"

#include <algorithm>
#include <utility>

namespace beamfork {

namespace {

// What an ideal lens does to place and path; any other surface leaves both.
LocalRay through_lens(const EyePath& path, const PlacedSurface& surface, const LocalRay& arriving) {
    const bool is_lens =
        surface.kind == SurfaceKind::objective || surface.kind == SurfaceKind::thin_lens;
    if (!is_lens) return arriving;
    return interact(surface, arriving, primary_wavelength, path.object_distance).value_or(arriving);
}

// Along straight stretches in the medium before each surface.
void add_paths(const EyePath& path, std::vector<RayCorner>& corners, double so_far) {
    Point from = corners.front().at;
    corners.front().path_in = corners.front().path_out = so_far;
    for (std::size_t i = 1; i < corners.size(); ++i) {
        RayCorner& corner = corners[i];
        const PlacedSurface& surface = path.surfaces[*corner.surface];
        const Pose& pose = surface.world_from_surface;
        const double stretch = glm::distance(from, corner.at);
        so_far += stretch * surface.index_before[primary_wavelength];
        corner.path_in = corner.path_out = so_far;
        if (stretch == 0 || i + 1 == corners.size()) continue;
        const Direction along = (corner.at - from) / stretch;
        const LocalRay leaving = through_lens(
            path, surface, {pose.point_in(corner.at), pose.direction_in(along), so_far});
        so_far = corner.path_out = leaving.path;
        from = pose.point_out(leaving.at);
    }
}

TracedRay with_surfaces(const EyePath& path, RayCourse course, double start) {
    TracedRay traced;
    traced.end = course.end;
    traced.corners.reserve(course.corners.size());
    traced.corners.push_back({std::nullopt, course.corners.front(), 0, 0});
    std::size_t next = 1;
    // Light goes straight on through openings: they have a corner only where a ray ends.
    for (std::size_t i = 0; i <= traced.end.surface && next < course.corners.size(); ++i) {
        const bool turns = !is_opening(path.surfaces[i].kind);
        if (turns || i == traced.end.surface)
            traced.corners.push_back({i, course.corners[next++], 0, 0});
    }
    // A roof's faces may be met in the other order: what is left is where the ray ended.
    while (next < course.corners.size())
        traced.corners.push_back({traced.end.surface, course.corners[next++], 0, 0});
    add_paths(path, traced.corners, start);
    return traced;
}

}  // namespace

std::vector<TracedRay>
trace_with_corners(const EyePath& path, const BundleTracer& tracer, const RayBundle& bundle) {
    std::vector<TracedRay> traced;
    traced.reserve(bundle.size());
    std::vector<RayCourse> courses = tracer.follow(bundle);
    for (std::size_t i = 0; i < courses.size(); ++i)
        traced.push_back(with_surfaces(path, std::move(courses[i]), bundle.path[i]));
    return traced;
}

TracedRay trace_with_corners(const EyePath& path, const Ray& start) {
    RayCourse course;
    course.end = trace_ray(path, start, primary_wavelength, &course.corners);
    return with_surfaces(path, std::move(course), start.path);
}

std::size_t dividing_surface(const Train& train) {
    const auto& left = train.path(Eye::left).surfaces;
    const auto& right = train.path(Eye::right).surfaces;
    const auto differs = [](const PlacedSurface& a, const PlacedSurface& b) {
        return a.kind != b.kind || a.part != b.part || a.world_from_surface != b.world_from_surface;
    };
    const auto found = std::mismatch(left.begin(), left.end(), right.begin(), right.end(),
                                     [&](const auto& a, const auto& b) { return !differs(a, b); });
    return static_cast<std::size_t>(found.first - left.begin());
}

}  // namespace beamfork
