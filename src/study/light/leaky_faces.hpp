// Bare faces that light meets too steeply for total reflection: most of it goes out, but Fresnel's formulas keep a part,
// nearly all of it just beyond the critical angle.
#pragma once

#include "trace/ray.hpp"

namespace beamfork {

class LeakyFaces {
public:
    explicit LeakyFaces(const EyePath& path);

    /// Share of a ray's light that arrives at the end of the path although it leaks, 0..1: what each bare face that it
    /// leaks at still throws back (glass/coating.hpp, unpolarised), if no opening stops that.
    [[nodiscard]] double kept(const Ray& start) const;

private:
    std::vector<std::size_t> faces_;  ///< the path's bare faces, in its order
    std::vector<EyePath> turned_;     ///< the path with none, one, two ... of them made mirrors
};

}  // namespace beamfork
