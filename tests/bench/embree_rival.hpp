// The same train traced with Embree, a general ray-tracing library: every surface is a quadrilateral in one scene, each leg
// asks for the nearest hit, and refraction, reflection and lenses are worked out beside it. Single precision, as the
// library has it. For comparison in the benchmarks alone.
#pragma once

#include <memory>

#include "trace/bundle.hpp"

namespace bench {

using namespace beamfork;

class EmbreeRival {
public:
    virtual ~EmbreeRival() = default;
    /// 1 or 16 rays at a time.
    virtual void trace(int packet) = 0;
    /// Nearly all rays reach the same spot within a hundredth of a millimetre.
    [[nodiscard]] virtual bool agrees(const BundleEnds& ends) const = 0;
};

/// Nothing where the library was not found when this was built.
std::unique_ptr<EmbreeRival> make_embree_rival(const EyePath& path, const RayBundle& bundle);

}  // namespace bench
