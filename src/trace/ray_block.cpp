#include "trace/ray_block.hpp"

#include <algorithm>
#include <limits>

namespace beamfork {

namespace {

using Column = RayBlock::Column;

// Mostly in air, where copying alone is several times quicker.
void fill(Column& to,
          const std::vector<double>& from,
          std::size_t first,
          std::size_t count,
          double scale) {
    const double* begin = from.data() + first;
    if (scale == 1) {
        std::copy_n(begin, count, to.data());
    } else {
        std::transform(begin, begin + count, to.data(),
                       [scale](double value) { return value * scale; });
    }
}

// The rest of the last granule repeats the last ray.
void pad(RayBlock& block, std::size_t count) {
    block.count = padded_lanes(count);
    for (Column* column :
         {&block.x, &block.y, &block.z, &block.kx, &block.ky, &block.kz, &block.path})
        std::fill(column->begin() + static_cast<std::ptrdiff_t>(count),
                  column->begin() + static_cast<std::ptrdiff_t>(block.count), (*column)[count - 1]);
    constexpr double endless = std::numeric_limits<double>::infinity();
    std::fill_n(block.end.begin(), block.count, endless);
    std::fill_n(block.grazing.begin(), block.count, endless);
}

}  // namespace

std::size_t load_block(RayBlock& block, const RayBundle& bundle, std::size_t first, double index) {
    const std::size_t count = std::min(RayBlock::capacity, bundle.size() - first);
    fill(block.x, bundle.x, first, count, 1);
    fill(block.y, bundle.y, first, count, 1);
    fill(block.z, bundle.z, first, count, 1);
    fill(block.kx, bundle.dx, first, count, index);
    fill(block.ky, bundle.dy, first, count, index);
    fill(block.kz, bundle.dz, first, count, index);
    fill(block.path, bundle.path, first, count, 1);
    pad(block, count);
    return count;
}

}  // namespace beamfork
