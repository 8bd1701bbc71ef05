#include "scene/traced_ray.hpp"

#include <algorithm>
#include <utility>

namespace beamfork {

namespace {

TracedRay with_surfaces(const EyePath& path, RayCourse course) {
    TracedRay traced;
    traced.end = course.end;
    traced.corners.reserve(course.corners.size());
    traced.corners.push_back({std::nullopt, course.corners.front()});
    std::size_t next = 1;
    // Light goes straight on through openings: they have a corner only where a ray ends.
    for (std::size_t i = 0; i <= traced.end.surface && next < course.corners.size(); ++i) {
        const bool turns = !is_opening(path.surfaces[i].kind);
        if (turns || i == traced.end.surface) traced.corners.push_back({i, course.corners[next++]});
    }
    // A roof's faces may be met in the other order: what is left is where the ray ended.
    while (next < course.corners.size())
        traced.corners.push_back({traced.end.surface, course.corners[next++]});
    return traced;
}

}  // namespace

std::vector<TracedRay>
trace_with_corners(const EyePath& path, const BundleTracer& tracer, const RayBundle& bundle) {
    std::vector<TracedRay> traced;
    traced.reserve(bundle.size());
    for (RayCourse& course : tracer.follow(bundle))
        traced.push_back(with_surfaces(path, std::move(course)));
    return traced;
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
