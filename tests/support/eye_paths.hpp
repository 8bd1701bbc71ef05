// Paths of light built surface by surface with indices given as numbers, and ways to look at a traced ray.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <vector>

#include "parts/prisms.hpp"
#include "support/random.hpp"
#include "trace/ray.hpp"

namespace test_paths {

using namespace beamfork;

inline PerWavelength at_all_wavelengths(double value) {
    PerWavelength all{};
    all.fill(value);
    return all;
}

inline PlacedSurface
placed(std::string name, SurfaceKind kind, const Pose& pose, Aperture aperture = Unbounded{}) {
    PlacedSurface surface;
    surface.name = std::move(name);
    surface.kind = kind;
    surface.world_from_surface = pose;
    surface.aperture = std::move(aperture);
    return surface;
}

/// Adds surfaces one behind the other and keeps the index of the medium that was reached.
class PathMaker {
public:
    PathMaker() { path_.object_distance = std::numeric_limits<double>::infinity(); }
    PathMaker& stop(const Pose& pose, Aperture aperture = Unbounded{}) {
        return add(placed("stop", SurfaceKind::stop, pose, std::move(aperture)));
    }
    PathMaker& mirror(const Pose& pose) { return add(placed("mirror", SurfaceKind::mirror, pose)); }
    PathMaker& face(const Pose& pose, double index_after) {
        PlacedSurface surface = placed("face", SurfaceKind::refraction, pose);
        next_index_ = index_after;
        return add(std::move(surface));
    }
    PathMaker& thin_lens(const Pose& pose, double focal_length, double object_distance) {
        PlacedSurface surface = placed("lens", SurfaceKind::thin_lens, pose);
        surface.focal_length = at_all_wavelengths(focal_length);
        surface.object_distance = object_distance;
        return add(std::move(surface));
    }
    PathMaker& objective(double focal_length, Aperture aperture = Unbounded{}) {
        PlacedSurface surface =
            placed("objective", SurfaceKind::objective, Pose{}, std::move(aperture));
        surface.focal_length = at_all_wavelengths(focal_length);
        return add(std::move(surface));
    }
    /// All faces of a prism, of that index whatever its glass is called.
    PathMaker& prism(const Prism& prism, const Pose& pose, double index) {
        for (const Surface& each : prism.surfaces) {
            PlacedSurface surface =
                placed(each.name, each.kind, pose * each.part_from_surface, each.aperture);
            if (each.kind == SurfaceKind::refraction)
                next_index_ = each.medium_after.empty() ? 1 : index;
            add(std::move(surface));
        }
        return *this;
    }
    /// Ends at this plane.
    EyePath ending_at(const Pose& pose) {
        stop(pose);
        path_.world_from_field_stop = pose;
        return path_;
    }

    /// Light comes from a target this far before the objective, not from the sky.
    PathMaker& from_target(double distance) {
        path_.object_distance = distance;
        return *this;
    }

private:
    PathMaker& add(PlacedSurface surface) {
        surface.index_before = at_all_wavelengths(index_);
        index_ = surface.kind == SurfaceKind::refraction ? next_index_ : index_;
        surface.index_after = at_all_wavelengths(index_);
        path_.surfaces.push_back(std::move(surface));
        return *this;
    }

    EyePath path_;
    double index_ = 1;
    double next_index_ = 1;
};

/// The path up to a surface, which becomes its last.
inline EyePath up_to(EyePath path, std::size_t surface) {
    path.surfaces.resize(surface + 1);
    return path;
}

/// What a ray is when it arrives at each surface, up to the one where it ends.
inline std::vector<Ray> arrivals(const EyePath& path, const Ray& start, std::size_t wavelength) {
    const std::size_t end = trace_ray(path, start, wavelength).surface;
    std::vector<Ray> found;
    for (std::size_t i = 0; i <= end; ++i)
        found.push_back(trace_ray(up_to(path, i), start, wavelength).ray);
    return found;
}

inline Direction random_direction_near_z(Random& random, double widest_slope) {
    return glm::normalize(Direction{random.between(-widest_slope, widest_slope),
                                    random.between(-widest_slope, widest_slope), 1});
}

/// Where a straight ray comes nearest to the z axis of a frame, as a distance behind the frame's origin along it.
inline double crossing_of_axis(const Ray& ray, const Pose& frame) {
    const Point at = frame.point_in(ray.origin);
    const Direction along = frame.direction_in(ray.direction);
    const glm::dvec2 p{at};
    const glm::dvec2 u{along};
    return at.z - glm::dot(p, u) / glm::dot(u, u) * along.z;
}

}  // namespace test_paths
