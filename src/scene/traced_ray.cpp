#include "scene/traced_ray.hpp"

#include <algorithm>

namespace beamfork {

TracedRay trace_with_corners(const EyePath& path, const Ray& start, std::size_t wavelength) {
    std::vector<Point> points;
    TracedRay traced;
    traced.end = trace_ray(path, start, wavelength, &points);
    traced.corners.reserve(points.size());
    traced.corners.push_back({std::nullopt, points.front()});
    std::size_t next = 1;
    // Light goes straight on through openings: they have a corner only where a ray ends.
    for (std::size_t i = 0; i <= traced.end.surface && next < points.size(); ++i) {
        const bool turns = !is_opening(path.surfaces[i].kind);
        if (turns || i == traced.end.surface) traced.corners.push_back({i, points[next++]});
    }
    // A roof's faces may be met in the other order: what is left is where the ray ended.
    while (next < points.size())
        traced.corners.push_back({traced.end.surface, points[next++]});
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
