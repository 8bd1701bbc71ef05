// Where rays start: deterministic points over the objective and over the field, and the ray that
// belongs to a point of each.
#pragma once

#include <vector>

#include "trace/bundle.hpp"

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

/// Those rays for many points of the pupil.
RayBundle bundle_into(const Train& train,
                      FieldSlope field,
                      std::span<const glm::dvec2> pupil,
                      double ahead = 10);
/// The same into columns that may be used again.
void fill_bundle(RayBundle& bundle,
                 const Train& train,
                 FieldSlope field,
                 std::span<const glm::dvec2> pupil,
                 double ahead = 10);

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

/// Where chief rays close to the axis arrive on a path's last plane, mm: the axis's own and how the place goes with the
/// field's slope.
struct ChiefMap {
    glm::dvec2 axis{0};
    glm::dmat2 place_from_slope{1.0};
};
/// Farther on than the last plane by `behind` mm along its axis. The path must let chief rays through.
ChiefMap chief_map(const Train& train, const EyePath& open, double behind = 0);

/// The eye's path without openings: nothing stands in the light and every ray goes on to the end, for finding where chief rays would go.
EyePath without_stops(const EyePath& path);

}  // namespace beamfork
