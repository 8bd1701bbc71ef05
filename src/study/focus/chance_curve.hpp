// The chance that a sum of independent values lies below a limit, where each is either anywhere within +- with equal
// chance or normal: their distributions folded into one, not taken for a normal one.
#pragma once

#include <vector>

namespace beamfork {

/// About 0. One rectangle and all normal parts together are folded in closed form, further rectangles as running means
/// on a grid: within 1e-4 of the sums that are known in closed form (tests/study/focus/chance_curve_test.cpp).
class ChanceCurve {
public:
    /// `half_widths` of the rectangles and the standard deviation of all normal parts together, in one unit.
    ChanceCurve(std::vector<double> half_widths, double normal);

    /// Chance of a value below `limit`, 0..1.
    [[nodiscard]] double below(double limit) const;
    [[nodiscard]] double standard() const;

private:
    double standard_ = 0;
    double end_ = 0;  ///< the grid runs from -end_ to end_; beside it the chance is 0 or 1
    std::vector<double> chance_;  ///< at evenly spaced places
};

/// Probability that a normal value with this mean and standard deviation is below 0.
double normal_below_zero(double mean, double standard);

}  // namespace beamfork
