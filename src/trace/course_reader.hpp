// Reads a ray's corners out of the trail that the inner loops kept.
#pragma once

#include "trace/bundle.hpp"
#include "trace/bundle_kernel.hpp"

namespace beamfork {

/// Keeps references to the path and to its straightened form.
class CourseReader {
public:
    CourseReader(const EyePath& path, const StraightPath& straight, std::size_t rays)
        : path_(path), straight_(straight), trail_(path.surfaces.size(), rays) {}

    [[nodiscard]] RayTrail& trail() { return trail_; }
    /// Of the ray in that lane, which started and ended as told.
    [[nodiscard]] RayCourse course(std::size_t lane, const RayEnd& told);

private:
    [[nodiscard]] std::size_t surface_at(std::size_t step, std::size_t lane);
    [[nodiscard]] Ray arrival(std::size_t surface, std::size_t lane);

    const EyePath& path_;
    const StraightPath& straight_;
    RayTrail trail_;
};

}  // namespace beamfork
