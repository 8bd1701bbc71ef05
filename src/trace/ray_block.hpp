// Rays of a bundle on their way into the inner loops, block by block, and how each of them came out.
#pragma once

#include <array>
#include <limits>

#include "trace/bundle.hpp"
#include "trace/bundle_kernel.hpp"

namespace beamfork {

/// Fills the block with rays of the bundle from `first` on, in a medium of that index; returns how many they are.
std::size_t load_block(RayBlock& block, const RayBundle& bundle, std::size_t first, double index);

/// Lanes that the inner loops fill for so many rays.
constexpr std::size_t padded_lanes(std::size_t rays) {
    return (rays + RayBlock::granule - 1) / RayBlock::granule * RayBlock::granule;
}

/// How the ray in a lane ended, and where: an index into EyePath::surfaces.
struct LaneEnd {
    RayFate fate = RayFate::reached;
    std::size_t surface = 0;
};
inline LaneEnd end_in(const RayBlock& block, std::size_t lane, std::size_t last_surface) {
    if (block.end[lane] == std::numeric_limits<double>::infinity())
        return {RayFate::reached, last_surface};
    constexpr std::array fates{RayFate::missed, RayFate::clipped, RayFate::leaked};
    const auto code = static_cast<std::uint32_t>(block.end[lane]);
    return {fates[code % fates_per_surface], code / fates_per_surface};
}

/// Whether it met a plane so nearly along it that the reference must tell. True where it is no number, too.
inline bool is_vague(const RayBlock& block, std::size_t lane) {
    return !(block.grazing[lane] >= near_grazing);
}

}  // namespace beamfork
