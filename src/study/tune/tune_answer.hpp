// Solved for: at which values of the varied number the watched result is the wanted one.
#pragma once

#include "study/tune/tune_curve.hpp"

namespace beamfork {

struct TuneCrossing {
    double at = 0;
    double value =
        0;  ///< of the result there: the wanted one, within its grain or one stair of counted rays
    Millimetres margin;     ///< focus margin there; negative: focus is not reached
    bool is_rising = true;  ///< whether the result grows with the number
};

struct TuneAnswer {
    double wanted = 0;
    std::vector<TuneCrossing> crossings;  ///< by rising `at`
    std::vector<double> jumps;  ///< where the result jumps past the wanted one without taking it
    std::vector<TuneInterval> at_least;  ///< where the result is the wanted one or more
    std::optional<TunePoint>
        nearest;  ///< without a crossing: where the result comes nearest; none: no result
    [[nodiscard]] bool is_found() const { return !crossings.empty(); }
};

/// All crossings that the curve's points tell apart, each by narrow_bracket; a curve that only touches the wanted
/// result counts, too. The curve must be the tuner's own.
TuneAnswer
solve_for(Tuner& tuner, const TuneCurve& curve, double wanted, const GivenUp& is_given_up = {});

}  // namespace beamfork
