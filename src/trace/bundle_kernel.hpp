// The inner loops of the fast tracer: a block of rays through a straightened path, compiled once for each set of
// vector instructions and chosen by what the processor has.
#pragma once

#include <string>
#include <vector>

#include "trace/straight_path.hpp"

namespace beamfork {

/// A ray that meets a plane with a cosine (or its square) below this is one for the scalar reference; the kernel keeps
/// its roots real meanwhile.
constexpr double near_grazing = 1e-5;

/// Rays side by side, few enough to stay in the processor's nearest cache.
struct RayBlock {
    static constexpr std::size_t capacity = 256;
    static constexpr std::size_t granule = 16;  ///< counts are multiples of this: pad with any ray
    struct alignas(64) Column : std::array<double, capacity> {
    };  ///< aligned for the widest vectors
    /// Before: in the world; directions of the length of the first medium's index. After: in the frame of the last
    /// plane, directions as long as the last index.
    Column x, y, z, kx, ky, kz;
    Column path;
    Column end;  ///< infinite: reached; else an end_code
    /// The smallest cosine, times the index, with which it met any plane, or that one's square: see near_grazing.
    Column grazing;
    std::size_t count;
};

using BlockTracer = void (*)(const StraightPath& path, RayBlock& block);

struct InstructionSet {
    std::string name;  ///< "AVX3" (AVX-512), "AVX2", "SSE4", "EMU128" or "SCALAR"
    BlockTracer trace = nullptr;
};

/// Those this processor can run, best first. Their answers differ by rounding: some fuse multiply and add.
const std::vector<InstructionSet>& instruction_sets();

}  // namespace beamfork
