// Rays to both eyes at once: what both eyes share is traced once and read once, then each arm by itself.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "trace/bundle_kernel.hpp"
#include "trace/ray_block.hpp"

namespace beamfork {

/// One ray that comes to both eyes, if nothing stops it.
struct ForkedRay {
    std::vector<RayCorner>
        common;  ///< up to the face that divides the light, in the left eye's path
    /// Left, right: how it ends in that eye's path, and the corners behind the dividing face.
    std::array<TracedRay, 2> arms;
};

/// The first surface at which the two eyes' paths differ: the dividing face of the cube.
std::size_t dividing_surface(const Train& train);

/// Both eyes' paths of one train at one wavelength, made ready. Keeps references to them.
class ForkedTracer {
public:
    ForkedTracer(const Train& train, std::size_t wavelength);

    [[nodiscard]] std::vector<ForkedRay> follow(const RayBundle& bundle) const;

private:
    void
    follow_block(const RayBundle& bundle, std::size_t first, std::vector<ForkedRay>& rays) const;
    [[nodiscard]] TracedRay by_reference(std::size_t eye, const Ray& ray) const;
    [[nodiscard]] ForkedRay forked(TracedRay left) const;
    [[nodiscard]] TracedRay arm_of(TracedRay whole) const;

    std::array<const EyePath*, 2> paths_;
    std::size_t wavelength_;
    std::size_t dividing_;
    std::array<std::optional<StraightPath>, 2> straight_;
    std::size_t shared_sections_ = 0;  ///< of the straightened paths: they begin alike
    BlockTracer trace_block_;
};

}  // namespace beamfork
