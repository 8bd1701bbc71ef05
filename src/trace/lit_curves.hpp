// The lit part of a pupil as the space between two closed curves about one of its points.
#pragma once

#include "trace/pupil_kernel.hpp"

namespace beamfork {

/// A closed curve, each of whose pieces is the edge that reaches farthest in (or out).
struct LitCurve {
    AzimuthColumn at{};  ///< its distance on each line
    /// Whose distances those are; nothing where it is the lines' start.
    std::array<const AzimuthColumn*, most_azimuths> edge{};
};

/// Area between the two, where the outer is farther out, over the step in azimuth.
///
/// The sum of a smooth periodic function over even steps is as good as exact. Where one edge takes over from another
/// between two lines the function has a kink: there the sum is wrong by the change of slope times a share of the step,
/// by the Euler-Maclaurin formula (M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 23.1.30, the number from memory) with the
/// kink at its place within the step.
double area_between(const LitCurve& outer, const LitCurve& inner, std::size_t lines);

}  // namespace beamfork
