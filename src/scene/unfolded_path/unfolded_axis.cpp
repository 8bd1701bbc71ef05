#include "scene/unfolded_path/unfolded_axis.hpp"

#include <cmath>

#include "train/train.hpp"

namespace beamfork {

namespace {

bool folds_the_light(SurfaceKind kind) {
    return kind == SurfaceKind::mirror || kind == SurfaceKind::total_reflection;
}

}  // namespace

Unfolding Unfolding::behind(const Pose& mirror) const {
    const Direction n = mirror.z();
    const glm::dmat3 reflection = glm::dmat3(1.0) - 2.0 * glm::outerProduct(n, n);
    return {linear * reflection, linear * (2 * glm::dot(n, mirror.origin) * n) + offset};
}

UnfoldedAxis::UnfoldedAxis(const EyePath& path) {
    Unfolding now;
    for (const PlacedSurface& surface : path.surfaces) {
        before.push_back(now);
        if (folds_the_light(surface.kind)) now = now.behind(surface.world_from_surface);
        behind.push_back(now);
    }
}

double reach_along(const Aperture& aperture, glm::dvec2 from, glm::dvec2 along) {
    if (!contains(aperture, from)) return 0;
    double inside = 0;
    double outside = 1;
    constexpr double far_away = 1e5;  // wider than any telescope
    while (contains(aperture, from + outside * along) && outside < far_away)
        outside *= 2;
    constexpr int halvings = 60;  // down to rounding
    for (int i = 0; i < halvings; ++i) {
        const double middle = (inside + outside) / 2;
        (contains(aperture, from + middle * along) ? inside : outside) = middle;
    }
    return inside;
}

std::optional<OpeningSection>
section_of(const PlacedSurface& surface, const Unfolding& unfolding, glm::dvec2 across) {
    if (std::holds_alternative<Unbounded>(surface.aperture)) return std::nullopt;
    const Pose& pose = surface.world_from_surface;
    const Direction normal = unfolding.direction(pose.z());
    constexpr double along_the_axis = 1e-6;
    if (std::abs(normal.z) < along_the_axis) return std::nullopt;
    const double z = glm::dot(unfolding.point(pose.origin), normal) / normal.z;
    const Direction sideways = glm::cross(Direction{0, 0, 1}, Direction{across, 0});
    Direction edge = glm::normalize(glm::cross(sideways, normal));
    if (glm::dot(glm::dvec2(edge), across) < 0) edge = -edge;
    const Point middle{0, 0, z};
    const glm::dvec2 from{pose.point_in(unfolding.world_point(middle))};
    const glm::dvec2 along{pose.direction_in(unfolding.world_direction(edge))};
    const auto place = [&](double distance) {
        const Point at = middle + distance * edge;
        return AxisPlace{at.z, glm::dot(glm::dvec2(at), across)};
    };
    return OpeningSection{place(reach_along(surface.aperture, from, along)),
                          place(-reach_along(surface.aperture, from, -along))};
}

glm::dvec2 folding_plane(const EyePath& path, const UnfoldedAxis& axis, std::size_t head) {
    // Across the axis, of a unit normal: more than an error of a prism.
    constexpr double leans = 0.1;
    for (std::size_t i = 0; i < path.surfaces.size(); ++i) {
        const PlacedSurface& surface = path.surfaces[i];
        if (surface.part != head || !folds_the_light(surface.kind)) continue;
        const glm::dvec2 lean{axis.before[i].direction(surface.world_from_surface.z())};
        if (glm::length(lean) > leans) return glm::normalize(lean);
    }
    return {0, 1};
}

double axis_place_near_stop(const EyePath& path, double stop, double reduced_behind_stop) {
    if (reduced_behind_stop >= 0) return stop + reduced_behind_stop;
    double remaining = -reduced_behind_stop;
    double place = stop;
    for (auto step = path.steps.rbegin(); step != path.steps.rend(); ++step) {
        if (step->lens_focal_length != 0) return place;
        const double reduced = step->reduced();
        if (reduced > 0 && remaining <= reduced) return place - step->length * remaining / reduced;
        remaining -= reduced;
        place -= step->length;
    }
    return place - remaining;
}

}  // namespace beamfork
