// Light of field points from a few rays each: where the light is bounded in the pupil instead of how many of a thousand
// rays arrive. For drags and for searches that try many setups; counting rays (clipping) is the check and the
// settled answer.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "study/light/clipping.hpp"
#include "trace/pupil_map.hpp"
#include "trace/sampling.hpp"

namespace beamfork {

/// A field point's light, and what of the whole aperture's the telescope's own obstruction takes.
struct PointLight {
    LitPoint point;
    double obstructed = 0;  ///< share of all the aperture's light, 0..1
};

/// Of the light that its few rays leave in doubt, this share of the objective's at most is put up with; else the field
/// point's rays are to be counted.
constexpr double most_few_ray_doubt = 0.003;

/// One answer for each field point, in order. `places` are their LitPoint::at, `slopes` what belongs to them. Nothing
/// for a point whose light is bounded by curves that the few rays do not describe to within `most_few_ray_doubt`, and
/// for all points of a path of which nothing such is known.
std::vector<std::optional<PointLight>> few_ray_light(const Train& train,
                                                     const EyePath& path,
                                                     std::span<const glm::dvec2> places,
                                                     std::span<const FieldSlope> slopes);

/// Adds to the share of the same end, if it is there.
void add_share(std::vector<EndShare>& ends, const EndShare& more);

}  // namespace beamfork
