// Many rays through one eye's path at once: the tracer that every study and the picture use. It does what `trace_ray`
// does, which stays as the reference it is tested against: the same ends, and the same places and paths within
// 1e-9 mm. Rays that come within rounding of an edge may end otherwise.
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "trace/ray.hpp"
#include "trace/tracer_form.hpp"

namespace beamfork {

struct RayBlock;
class RayTrail;
struct StraightPath;
struct StraightSection;

/// Rays side by side, in the world.
struct RayBundle {
    std::vector<double> x, y, z;
    std::vector<double> dx, dy, dz;  ///< unit
    std::vector<double> path;        ///< optical path so far, mm

    void add(const Ray& ray);
    void resize(std::size_t count);  ///< new rays are all zeros, to be set
    void set(std::size_t i, const Ray& ray) {
        x[i] = ray.origin.x;
        y[i] = ray.origin.y;
        z[i] = ray.origin.z;
        dx[i] = ray.direction.x;
        dy[i] = ray.direction.y;
        dz[i] = ray.direction.z;
        path[i] = ray.path;
    }
    [[nodiscard]] std::size_t size() const { return x.size(); }
    [[nodiscard]] Ray ray(std::size_t i) const;
};

/// What became of the rays of a bundle, in its order. A ray that is not reached has an end; the rest of it is
/// without meaning.
struct BundleEnds {
    std::vector<RayFate> fate;
    std::vector<std::uint32_t> surface;  ///< where it ended, index into EyePath::surfaces
    /// In the frame of the last surface, in mm; z is 0 but where that surface is curved.
    std::vector<double> x, y, z;
    std::vector<double> dx, dy, dz;  ///< unit
    std::vector<double> path;        ///< optical path, mm

    [[nodiscard]] std::size_t size() const { return fate.size(); }
    [[nodiscard]] bool reached(std::size_t i) const { return fate[i] == RayFate::reached; }
    [[nodiscard]] glm::dvec2 spot(std::size_t i) const { return {x[i], y[i]}; }
    [[nodiscard]] Point at(std::size_t i) const { return {x[i], y[i], z[i]}; }
    [[nodiscard]] Direction along(std::size_t i) const { return {dx[i], dy[i], dz[i]}; }
};

/// One eye's path at one wavelength, made ready. Keeps a reference to the path.
class BundleTracer {
public:
    BundleTracer(const EyePath& path, std::size_t wavelength, TracerForm form = {});

    [[nodiscard]] BundleEnds trace(const RayBundle& bundle) const;
    /// Into columns that may be used again.
    void trace(const RayBundle& bundle, BundleEnds& ends) const;
    /// With the corners of every ray, for drawing.
    [[nodiscard]] std::vector<TracedRay> follow(const RayBundle& bundle) const;
    /// False for a path that only the reference describes; it then traces all rays.
    [[nodiscard]] bool is_fast() const { return straight_ != nullptr; }

private:
    void trace_fast(const RayBundle& bundle, std::size_t first, BundleEnds& ends) const;
    void trace_by_reference(const RayBundle& bundle, std::size_t i, BundleEnds& ends) const;

    const EyePath& path_;
    std::size_t wavelength_;
    std::shared_ptr<const StraightPath> straight_;  ///< null: only the reference describes it
    void (*trace_block_)(std::span<const StraightSection> sections,
                         RayBlock& block,
                         RayTrail* trail);
};

}  // namespace beamfork
