#include "trace/ray.hpp"

#include <cmath>
#include <limits>

namespace beamfork {

std::optional<Direction> refracted(const Direction& direction, double n1, double n2) {
    const double ratio = n1 / n2;
    const double x = ratio * direction.x;
    const double y = ratio * direction.y;
    const double z_squared = 1 - x * x - y * y;
    if (z_squared < 0) return std::nullopt;
    return Direction{x, y, std::copysign(std::sqrt(z_squared), direction.z)};
}

namespace {

// A bare face reflects only where sin(incidence) >= 1 / n.
bool reflects_totally(const Direction& direction, double n_glass) {
    const double sine_squared = 1 - direction.z * direction.z;
    return n_glass * n_glass * sine_squared >= 1;
}

// An ideal objective that obeys the sine condition: light from one object point leaves a sphere about the
// image towards that point's image, and all of it arrives there with the same optical path.
LocalRay through_objective(const LocalRay& in, double focal_length, double object_distance) {
    const glm::dvec2 q{in.at};
    const bool is_far = std::isinf(object_distance);
    const double v =
        is_far ? focal_length : object_distance * focal_length / (object_distance - focal_length);
    const glm::dvec2 slope = glm::dvec2(in.direction) / in.direction.z;
    const glm::dvec2 object = is_far ? glm::dvec2{0} : q - object_distance * slope;
    const Point image =
        is_far ? Point{focal_length * slope, v} : Point{-object * (v / object_distance), v};
    const Point leaving{q, v - std::sqrt(v * v - glm::dot(q, q))};
    const double to_image = glm::distance(leaving, image);
    // Path from a plane wavefront through the lens's middle, or from the object point.
    const double arrived = is_far ? glm::dot(q, glm::dvec2(in.direction))
                                  : glm::distance(Point{object, -object_distance}, in.at);
    const double chief =
        glm::length(image) + (is_far ? 0 : glm::length(Point{object, object_distance}));
    return {leaving, (image - leaving) / to_image, in.path + chief - to_image - arrived};
}

// An ideal thin lens: keeps the tangents' law exactly and gives all light from one point of its object
// plane the same optical path to that point's image.
LocalRay through_thin_lens(const LocalRay& in, double focal_length, double object_distance) {
    const glm::dvec2 q{in.at};
    const glm::dvec2 slope_in = glm::dvec2(in.direction) / in.direction.z;
    const glm::dvec2 slope_out = slope_in - q / focal_length;
    const double stretch_in = std::sqrt(1 + glm::dot(slope_in, slope_in));
    const double stretch_out = std::sqrt(1 + glm::dot(slope_out, slope_out));
    const double s = object_distance;
    // s / s_image; the form below also holds where s is 0.
    const double factor = 1 + s / focal_length;
    const double s_image = s / factor;
    const glm::dvec2 object = q + s * slope_in;
    const double to_object = std::copysign(std::sqrt(s * s + glm::dot(object, object)), s);
    const double chief = to_object * (1 / factor - 1);
    return {in.at, Direction{slope_out, 1} / stretch_out,
            in.path + chief + s * stretch_in - s_image * stretch_out};
}

// What the plate adds to the path grows outward: light's part across the axis, of the length of its medium's index,
// grows by as much (the rays stand square to the wave). Nothing for a ray that it would turn back.
std::optional<LocalRay>
through_phase_plate(const LocalRay& in, const PhaseProfile& profile, double index) {
    const double q = in.at.x * in.at.x + in.at.y * in.at.y;
    const double turn = profile.turn_over_radius(q) / index;
    const double x = in.direction.x + turn * in.at.x;
    const double y = in.direction.y + turn * in.at.y;
    const double z_squared = 1 - x * x - y * y;
    if (z_squared < 0) return std::nullopt;
    return LocalRay{in.at,
                    {x, y, std::copysign(std::sqrt(z_squared), in.direction.z)},
                    in.path + profile.path(q)};
}

double distance_to(const PlacedSurface& surface, const Ray& ray) {
    const Pose& pose = surface.world_from_surface;
    return -pose.point_in(ray.origin).z / pose.direction_in(ray.direction).z;
}

// The two faces of a roof stand side by side: half of a beam meets the one first, half the other.
class RoofOrder {
public:
    std::size_t surface_at(const EyePath& path, std::size_t step, const Ray& ray) {
        if (!path.surfaces[step].is_roof) return step;
        is_second_ = !is_second_;
        if (!is_second_) return is_swapped_ ? step - 1 : step;
        is_swapped_ =
            step + 1 < path.surfaces.size()
            && distance_to(path.surfaces[step + 1], ray) < distance_to(path.surfaces[step], ray);
        return is_swapped_ ? step + 1 : step;
    }

private:
    bool is_second_ = false;
    bool is_swapped_ = false;
};

RayCorner corner_at(std::size_t surface, const Ray& ray) {
    return {surface, ray.origin, ray.origin, ray.path, ray.path};
}

}  // namespace

std::size_t first_of_roof(const EyePath& path, std::size_t face) {
    std::size_t faces_before = 0;
    while (faces_before < face && path.surfaces[face - faces_before - 1].is_roof)
        ++faces_before;
    return faces_before % 2 == 0 ? face : face - 1;
}

std::optional<LocalRay> interact(const PlacedSurface& surface,
                                 const LocalRay& in,
                                 std::size_t wavelength,
                                 double object_distance) {
    switch (surface.kind) {
    case SurfaceKind::stop:
    case SurfaceKind::obstruction: return in;
    case SurfaceKind::refraction: {
        const auto bent = refracted(in.direction, surface.index_before[wavelength],
                                    surface.index_after[wavelength]);
        if (!bent) return std::nullopt;
        return LocalRay{in.at, *bent, in.path};
    }
    case SurfaceKind::total_reflection:
        if (!reflects_totally(in.direction, surface.index_before[wavelength])) return std::nullopt;
        [[fallthrough]];
    case SurfaceKind::mirror:
        if (!surface.shape.is_plane()) {
            return LocalRay{in.at, mirrored(in.direction, normal_at(surface.shape, in.at)),
                            in.path};
        }
        return LocalRay{in.at, {in.direction.x, in.direction.y, -in.direction.z}, in.path};
    case SurfaceKind::objective:
        return through_objective(in, surface.focal_length[wavelength], object_distance);
    case SurfaceKind::thin_lens:
        return through_thin_lens(in, surface.focal_length[wavelength], surface.object_distance);
    case SurfaceKind::phase_plate:
        return through_phase_plate(in, surface.profile, surface.index_before[wavelength]);
    }
    return in;
}

RayEnd trace_ray(const EyePath& path,
                 const Ray& start,
                 std::size_t wavelength,
                 std::vector<RayCorner>* corners) {
    constexpr double grazing = 1e-9;  // cosine below which a ray runs beside the plane
    Ray ray = start;
    if (corners) corners->push_back(start_of(ray));
    const std::size_t last = path.surfaces.size() - 1;
    RoofOrder roof;
    for (std::size_t step = 0; step <= last; ++step) {
        const std::size_t i = roof.surface_at(path, step, ray);
        const PlacedSurface& surface = path.surfaces[i];
        const Pose& pose = surface.world_from_surface;
        const Point from = pose.point_in(ray.origin);
        const Direction along = pose.direction_in(ray.direction);
        if (std::abs(along.z) < grazing) return {RayFate::missed, i, ray};
        const double distance = -from.z / along.z;
        LocalRay arriving{{from.x + distance * along.x, from.y + distance * along.y, 0},
                          along,
                          ray.path + distance * surface.index_before[wavelength]};
        if (!surface.shape.is_plane()) {
            const auto farther = distance_to(surface.shape, arriving.at, along);
            if (!farther) return {RayFate::missed, i, ray};
            arriving.at += *farther * along;
            arriving.path += *farther * surface.index_before[wavelength];
        }
        ray.origin = pose.point_out(arriving.at);
        ray.path = arriving.path;
        const bool is_last = step == last;
        const bool goes_straight = is_opening(surface.kind);
        if (corners && (!goes_straight || is_last)) corners->push_back(corner_at(i, ray));
        if (is_last) break;
        const bool is_inside = contains(surface.aperture, glm::dvec2(arriving.at))
                               != (surface.kind == SurfaceKind::obstruction);
        const auto leaving = is_inside
                                 ? interact(surface, arriving, wavelength, path.object_distance)
                                 : std::nullopt;
        if (!leaving) {
            if (corners && goes_straight) corners->push_back(corner_at(i, ray));
            return {is_inside ? RayFate::leaked : RayFate::clipped, i, ray};
        }
        if (goes_straight) continue;
        ray = {pose.point_out(leaving->at), pose.direction_out(leaving->direction), leaving->path};
        if (!corners) continue;
        corners->back().leaves = ray.origin;
        corners->back().path_out = ray.path;
    }
    return {RayFate::reached, last, ray};
}

TracedRay trace_with_corners(const EyePath& path, const Ray& start, std::size_t wavelength) {
    TracedRay traced;
    traced.end = trace_ray(path, start, wavelength, &traced.corners);
    return traced;
}

}  // namespace beamfork
