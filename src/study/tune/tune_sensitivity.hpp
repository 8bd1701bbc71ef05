// What one more millimetre of each length, or one step more of each other number, changes in a watched result.
#pragma once

#include "study/tune/tune_curve.hpp"

namespace beamfork {

struct Sensitivity {
    Tunable tunable;
    double per_unit = 0;  ///< change of the result per unit of the number, by central difference
    double up = 0;        ///< the same by one step more alone ...
    double down = 0;      ///< ... and by one step less: they differ where the result bends
    [[nodiscard]] bool is_bent() const;
    /// What is told and compared: 1 of the number's unit, a tenth of a factor.
    [[nodiscard]] double step() const;
    [[nodiscard]] double per_step() const { return per_unit * step(); }
};

/// Largest effect of a step first; numbers that change nothing are left out. Focus and what follows from it are differenced over
/// a thousandth of a unit, traced results over a whole one, which evens out the counting of rays. Given up: what
/// there is so far. Empty when the setup makes no train.
std::vector<Sensitivity> sensitivities(const Setup& setup,
                                       const Choice& choice,
                                       Watched watched,
                                       TuneEffort effort = {},
                                       const GivenUp& is_given_up = {});

}  // namespace beamfork
