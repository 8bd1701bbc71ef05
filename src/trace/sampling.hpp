// Where rays start: deterministic points over the objective and over the field, and the ray that
// belongs to a point of each.
#pragma once

#include <vector>

#include "trace/ray.hpp"

#include <glm/glm.hpp>

namespace beamfork {

/// `count` points spread evenly over the unit disc on a sunflower spiral: radius sqrt((i + 1/2) / count),
/// angle i times the golden angle (H. Vogel, Mathematical Biosciences 44, 179-189, 1979).
std::vector<glm::dvec2> sunflower(int count);

/// `count` points evenly around the unit circle.
std::vector<glm::dvec2> rim(int count);

/// Tangents of a field point's angles from the axis: the chief ray's slope in the world's x and y.
using FieldSlope = glm::dvec2;

/// The ray that goes to `pupil` (in units of the objective's radius, in the plane of its rim) from the field point:
/// for the sky it starts on a plane wavefront `ahead` mm in front of the telescope's first opening, for a near target at the target
/// plane's point (its optical path is kept from there) but is drawn from `ahead` mm as well.
Ray ray_into(const Train& train, FieldSlope field, glm::dvec2 pupil, double ahead);

/// Where the chief ray crosses the plane of the field stop, in its frame (mm): the linear map from field
/// slopes, taken from traced chief rays close to the axis. Its inverse tells which slope belongs to a
/// place on the field stop; the root of its determinant is the effective focal length.
struct FieldMap {
    glm::dmat2 stop_from_slope{1.0};
    [[nodiscard]] FieldSlope slope_at(glm::dvec2 stop) const {
        return glm::inverse(stop_from_slope) * stop;
    }
};
FieldMap field_map(const Train& train, Eye eye);

/// The eye's path without openings: nothing stands in the light and every ray goes on to the end, for finding where chief rays would go.
EyePath without_stops(const EyePath& path);

}  // namespace beamfork
