// One eye's folded light laid out along one straight axis: every fold is undone by mirroring what lies behind it, so
// that a traced ray stays the ray it is (a "tunnel diagram"; W. J. Smith, Modern Optical Engineering, on prisms).
#pragma once

#include <optional>
#include <vector>

#include "geometry/aperture.hpp"
#include "geometry/pose.hpp"

namespace beamfork {

struct EyePath;
struct PlacedSurface;

/// x: along the unfolded axis from the world's origin at the telescope, as PlacedSurface::axis_position, mm of
/// geometric path. y: height from the axis in the plane of a section, mm.
using AxisPlace = glm::dvec2;

/// World to the unfolded frame, in which the axis is z: a rigid motion, mirrored behind an odd number of folds.
struct Unfolding {
    glm::dmat3 linear{1.0};
    Point offset{0.0};
    [[nodiscard]] Point point(const Point& world) const { return linear * world + offset; }
    [[nodiscard]] Direction direction(const Direction& world) const { return linear * world; }
    [[nodiscard]] Point world_point(const Point& unfolded) const {
        return (unfolded - offset) * linear;
    }
    [[nodiscard]] Direction world_direction(const Direction& unfolded) const {
        return unfolded * linear;
    }
    /// Behind a fold in the plane of `mirror`. Curved mirrors count as the plane in which they touch their frame.
    [[nodiscard]] Unfolding behind(const Pose& mirror) const;
};

/// The straight frame before and behind each surface of a path. Points of a fold's own plane are the same in both.
struct UnfoldedAxis {
    explicit UnfoldedAxis(const EyePath& path);
    std::vector<Unfolding> before;
    std::vector<Unfolding> behind;
};

/// Where an opening ends on either side of the axis, cut by the plane of the axis and `across` (unit, in the
/// unfolded frame's x and y). Nothing for an opening without an edge or a plane along the axis.
struct OpeningSection {
    AxisPlace above{0};  ///< on the side of `across`
    AxisPlace below{0};
};
std::optional<OpeningSection>
section_of(const PlacedSurface& surface, const Unfolding& unfolding, glm::dvec2 across);

/// Distance from `from` (inside the opening) to its edge along the unit vector `along`, mm; 0 when outside.
double reach_along(const Aperture& aperture, glm::dvec2 from, glm::dvec2 along);

/// The plane in which this eye's arm folds, as a unit vector across the axis; upright where nothing folds.
glm::dvec2 folding_plane(const EyePath& path, const UnfoldedAxis& axis, std::size_t head);

/// Place on the unfolded axis at a reduced distance behind (+) or before (-) the field stop, which stands at `stop`.
/// As point_near_stop (study/focus/focus_budget.hpp), it does not go back through a lens.
double axis_place_near_stop(const EyePath& path, double stop, double reduced_behind_stop);

}  // namespace beamfork
