// The inner loops of the fast tracer: a block of rays through a straightened path, compiled once for each set of
// vector instructions and chosen by what the processor has.
#pragma once

#include <span>
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

/// Where the rays of a block met each surface, in the straightened path, with the direction in which they came.
class RayTrail {
public:
    /// `t` tells which of the two faces of a roof was met first: the one with less.
    enum Number : std::size_t { x, y, z, kx, ky, kz, t, number_count };

    RayTrail(std::size_t surfaces, std::size_t rays)
        : stride_(rays), numbers_(surfaces * number_count * rays) {}
    [[nodiscard]] double* column(std::size_t surface, Number number) {
        return &numbers_[(surface * number_count + number) * stride_];
    }

private:
    std::size_t stride_;
    std::vector<double> numbers_;
};

/// Through some of a path's sections, one behind the other; all of them end with its last plane. `trail`, when given,
/// is filled as well.
using BlockTracer = void (*)(std::span<const StraightSection> sections,
                             RayBlock& block,
                             RayTrail* trail);

struct InstructionSet {
    std::string name;  ///< "AVX3" (AVX-512), "AVX2", "SSE4", "EMU128" or "SCALAR"
    BlockTracer trace = nullptr;
};

/// Those this processor can run, best first. Their answers differ by rounding: some fuse multiply and add.
const std::vector<InstructionSet>& instruction_sets();

}  // namespace beamfork
