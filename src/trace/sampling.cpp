#include "trace/sampling.hpp"

#include <cmath>
#include <numbers>

namespace beamfork {

std::vector<glm::dvec2> sunflower(int count) {
    BEAMFORK_EXPECTS(count > 0);
    const double golden_angle = std::numbers::pi * (3 - std::sqrt(5.0));
    std::vector<glm::dvec2> points;
    points.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const double radius = std::sqrt((i + 0.5) / count);
        points.emplace_back(radius * std::cos(i * golden_angle),
                            radius * std::sin(i * golden_angle));
    }
    return points;
}

std::vector<glm::dvec2> rim(int count) {
    BEAMFORK_EXPECTS(count > 0);
    std::vector<glm::dvec2> points;
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * std::numbers::pi * i / count;
        points.emplace_back(std::cos(angle), std::sin(angle));
    }
    return points;
}

namespace {

// What the rays from one point of the field share.
struct FarField {
    Direction along;
    double ahead;  ///< of the plane through the objective's middle
    [[nodiscard]] Ray ray_to(const Point& at) const {
        // The wavefront through the point `ahead` in front of the objective's middle.
        const double back = ahead + glm::dot(at, along);
        return {at - back * along, along, 0};
    }
};

struct NearField {
    Point object;
    double ahead;
    [[nodiscard]] Ray ray_to(const Point& at) const {
        const Direction along = glm::normalize(at - object);
        const double drawn = std::min(ahead, glm::distance(at, object));
        const Point start = at - drawn * along;
        return {start, along, glm::distance(object, start)};
    }
};

FarField far_field(const Train& train, FieldSlope field, double ahead) {
    return {glm::normalize(Direction{field, 1}), ahead + train.pupil_plane - train.light_enters};
}

NearField near_field(const Train& train, FieldSlope field, double ahead) {
    return {{-field * train.object_distance, train.pupil_plane - train.object_distance},
            ahead + train.pupil_plane - train.light_enters};
}

template <class Field>
void fill_from(const Field& field,
               const Train& train,
               std::span<const glm::dvec2> pupil,
               RayBundle& bundle) {
    bundle.resize(pupil.size());
    for (std::size_t i = 0; i < pupil.size(); ++i)
        bundle.set(i, field.ray_to({pupil[i] * train.objective_radius, train.pupil_plane}));
}

}  // namespace

RayBundle
bundle_into(const Train& train, FieldSlope field, std::span<const glm::dvec2> pupil, double ahead) {
    RayBundle bundle;
    fill_bundle(bundle, train, field, pupil, ahead);
    return bundle;
}

void fill_bundle(RayBundle& bundle,
                 const Train& train,
                 FieldSlope field,
                 std::span<const glm::dvec2> pupil,
                 double ahead) {
    if (std::isinf(train.object_distance)) {
        fill_from(far_field(train, field, ahead), train, pupil, bundle);
    } else {
        fill_from(near_field(train, field, ahead), train, pupil, bundle);
    }
}

Ray ray_into(const Train& train, FieldSlope field, glm::dvec2 pupil, double ahead) {
    const Point at{pupil * train.objective_radius, train.pupil_plane};
    if (std::isinf(train.object_distance)) return far_field(train, field, ahead).ray_to(at);
    return near_field(train, field, ahead).ray_to(at);
}

EyePath without_stops(const EyePath& path) {
    EyePath open = path;
    for (PlacedSurface& surface : open.surfaces) {
        surface.aperture = Unbounded{};
        if (surface.kind == SurfaceKind::obstruction) surface.kind = SurfaceKind::stop;
        if (surface.kind == SurfaceKind::total_reflection) surface.kind = SurfaceKind::mirror;
    }
    return open;
}

ChiefMap chief_map(const Train& train, const EyePath& open, double behind) {
    // Close enough to the axis to be linear, far enough for rounding.
    constexpr double slope = 1e-4;
    // A handful of rays: the reference takes less time than making the path ready for many, and gives the same last
    // digit on every processor, so that what is true to its place shows no side.
    const auto arrive = [&](FieldSlope field) {
        const RayEnd end = trace_ray(open, ray_into(train, field, {0, 0}, 10), primary_wavelength);
        const Pose& frame = open.world_from_field_stop;
        const glm::dvec2 at{frame.point_in(end.ray.origin)};
        if (behind == 0) return at;
        const Direction along = frame.direction_in(end.ray.direction);
        return at + behind / along.z * glm::dvec2(along);
    };
    ChiefMap map{arrive({0, 0}), {}};
    map.place_from_slope[0] = (arrive({slope, 0}) - arrive({-slope, 0})) / (2 * slope);
    map.place_from_slope[1] = (arrive({0, slope}) - arrive({0, -slope})) / (2 * slope);
    return map;
}

FieldMap field_map(const Train& train, Eye eye) {
    return {chief_map(train, without_stops(train.path(eye))).place_from_slope};
}

}  // namespace beamfork
