// The fast tracer held against the scalar reference, ray by ray, in all its forms and with all vector instructions
// of this processor.
#pragma once

#include <algorithm>

#include "support/near.hpp"
#include "trace/bundle.hpp"
#include "trace/bundle_kernel.hpp"

#include <doctest/doctest.h>

namespace test_paths {

using namespace beamfork;

/// How many rays of a comparison ended in which way.
struct Fates {
    std::size_t reached = 0, clipped = 0, leaked = 0, missed = 0;
    [[nodiscard]] std::size_t all() const { return reached + clipped + leaked + missed; }
    Fates& operator+=(const Fates& more) {
        reached += more.reached;
        clipped += more.clipped;
        leaked += more.leaked;
        missed += more.missed;
        return *this;
    }
};

/// Of two unit directions. Rounding of a hundred units in the last place, which a face met near the critical angle
/// multiplies by up to a few hundred.
constexpr double turn_within = 1e-11;

inline bool agrees(const EyePath& path, const BundleEnds& ends, std::size_t i, const RayEnd& end) {
    if (ends.fate[i] != end.fate || ends.surface[i] != end.surface) return false;
    if (end.fate != RayFate::reached) return true;
    const Pose& frame = path.surfaces.back().world_from_surface;
    return glm::distance(ends.at(i), frame.point_in(end.ray.origin)) < rounding
           && glm::distance(ends.along(i), frame.direction_in(end.ray.direction)) < turn_within
           && std::abs(ends.path[i] - end.ray.path) < rounding;
}

/// Rounding grows with the way light has gone, since each face carries on what the ones before have rounded, and with
/// the place's numbers: rays that slip along a leaning face go far.
inline double rounding_at(const RayCorner& corner) {
    return 2 * rounding * std::max({1.0, corner.path_in / 1000, glm::length(corner.at) / 1000});
}

inline bool same_corner(const RayCorner& corner, const RayCorner& expected) {
    const double within = rounding_at(expected);
    return corner.surface == expected.surface && glm::distance(corner.at, expected.at) < within
           && glm::distance(corner.leaves, expected.leaves) < within
           && std::abs(corner.path_in - expected.path_in) < within
           && std::abs(corner.path_out - expected.path_out) < within;
}

inline bool same_ray(const TracedRay& ray, const TracedRay& expected) {
    const RayEnd& end = expected.end;
    if (ray.end.fate != end.fate || ray.end.surface != end.surface) return false;
    return std::equal(ray.corners.begin(), ray.corners.end(), expected.corners.begin(),
                      expected.corners.end(), same_corner)
           && glm::distance(ray.end.ray.origin, end.ray.origin)
                  < rounding_at(expected.corners.back())
           && glm::distance(ray.end.ray.direction, end.ray.direction) < turn_within;
}

/// Rays that are followed turn and end where the reference says, at the same surfaces, with the same optical paths.
inline void check_corners(const EyePath& path, const RayBundle& bundle, std::size_t wavelength) {
    for (std::size_t set = 0; set < instruction_sets().size(); ++set) {
        for (const PlateForm plates : {PlateForm::where_exact, PlateForm::never}) {
            const auto rays = BundleTracer(path, wavelength, {plates, set}).follow(bundle);
            for (std::size_t i = 0; i < bundle.size(); ++i) {
                const TracedRay expected = trace_with_corners(path, bundle.ray(i), wavelength);
                if (same_ray(rays[i], expected)) continue;
                CAPTURE(instruction_sets()[set].name);
                CAPTURE(static_cast<int>(plates));
                CAPTURE(i);
                CAPTURE(static_cast<int>(expected.end.fate));
                CAPTURE(expected.end.surface);
                FAIL_CHECK("a followed ray goes otherwise than the reference says");
                return;
            }
        }
    }
}

/// Every form and instruction set ends every ray as the reference does.
inline Fates check_agreement(const EyePath& path, const RayBundle& bundle, std::size_t wavelength) {
    std::vector<RayEnd> expected;
    Fates fates;
    for (std::size_t i = 0; i < bundle.size(); ++i) {
        expected.push_back(trace_ray(path, bundle.ray(i), wavelength));
        const RayFate fate = expected.back().fate;
        fates.reached += fate == RayFate::reached ? 1 : 0;
        fates.clipped += fate == RayFate::clipped ? 1 : 0;
        fates.leaked += fate == RayFate::leaked ? 1 : 0;
        fates.missed += fate == RayFate::missed ? 1 : 0;
    }
    for (std::size_t set = 0; set < instruction_sets().size(); ++set) {
        for (const PlateForm plates : {PlateForm::where_exact, PlateForm::never}) {
            CAPTURE(instruction_sets()[set].name);
            CAPTURE(static_cast<int>(plates));
            const BundleEnds ends = BundleTracer(path, wavelength, {plates, set}).trace(bundle);
            for (std::size_t i = 0; i < bundle.size(); ++i) {
                const RayEnd& end = expected[i];
                if (agrees(path, ends, i, end)) continue;
                CAPTURE(i);
                const Pose& frame = path.surfaces.back().world_from_surface;
                CHECK(static_cast<int>(ends.fate[i]) == static_cast<int>(end.fate));
                CHECK(ends.surface[i] == end.surface);
                CHECK(near(glm::distance(ends.at(i), frame.point_in(end.ray.origin)), 0, rounding));
                CHECK(near(glm::distance(ends.along(i), frame.direction_in(end.ray.direction)), 0,
                           turn_within));
                CHECK(near(ends.path[i], end.ray.path, rounding));
                FAIL_CHECK("a ray ends otherwise than the reference says");
                return fates;
            }
        }
    }
    check_corners(path, bundle, wavelength);
    return fates;
}

}  // namespace test_paths
