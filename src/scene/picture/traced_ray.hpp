// A traced ray with the surface at each of its corners, and where the two arms part.
#pragma once

#include <optional>
#include <vector>

#include "trace/sampling.hpp"

namespace beamfork {

/// Where a ray turns or ends. The start in front of the objective belongs to no surface.
struct RayCorner {
    std::optional<std::size_t> surface;  ///< index into EyePath::surfaces
    Point at{0.0};
    /// Optical path up to here as the ray arrives and as it goes on, mm: an ideal lens's glass lies between.
    double path_in = 0;
    double path_out = 0;
};

struct TracedRay {
    std::vector<RayCorner> corners;
    RayEnd end;
    [[nodiscard]] bool is_lost() const { return end.fate != RayFate::reached; }
};

/// Of every ray of the bundle through the path that the tracer was made for.
std::vector<TracedRay>
trace_with_corners(const EyePath& path, const BundleTracer& tracer, const RayBundle& bundle);

/// One ray, by the reference.
TracedRay trace_with_corners(const EyePath& path, const Ray& start);

/// The first surface at which the two eyes' paths differ: the dividing face of the cube. Light up to it is
/// common to both eyes.
std::size_t dividing_surface(const Train& train);

}  // namespace beamfork
