// Reads a ray's corners out of the trail that the inner loops kept: at which surface each lies, and the optical path
// from corner to corner.
#pragma once

#include "trace/ray_block.hpp"

namespace beamfork {

/// Keeps references to the path and to its straightened form.
class CornerReader {
public:
    CornerReader(const EyePath& path,
                 const StraightPath& straight,
                 std::size_t wavelength,
                 std::size_t rays)
        : path_(path),
          straight_(straight),
          wavelength_(wavelength),
          trail_(path.surfaces.size(), rays) {}

    [[nodiscard]] RayTrail& trail() { return trail_; }

    /// Of the ray in that lane, which ends as told: `first` and the corners behind it, at the surface `from` and later
    /// ones. With `from` behind the path's beginning `first` is the corner before it.
    [[nodiscard]] TracedRay
    read(std::size_t lane, LaneEnd told, const RayCorner& first, std::size_t from = 0);

private:
    [[nodiscard]] std::size_t surface_at(std::size_t step, std::size_t lane);
    [[nodiscard]] Ray arrival(std::size_t surface, std::size_t lane, const RayCorner& before);
    [[nodiscard]] RayCorner turn(std::size_t surface, const Ray& arrived) const;

    const EyePath& path_;
    const StraightPath& straight_;
    std::size_t wavelength_;
    RayTrail trail_;
};

}  // namespace beamfork
