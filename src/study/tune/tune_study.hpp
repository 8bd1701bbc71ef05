// All that the study "tune" tells of one number and one result: the curve, what solves for a wanted result, and what
// every other number would do.
#pragma once

#include "study/tune/tune_answer.hpp"
#include "study/tune/tune_sensitivity.hpp"

namespace beamfork {

struct TuneQuestion {
    Varied varied;
    Watched watched = Watched::margin;
    std::optional<double> wanted;  ///< in the result's unit; nothing: no solution is sought
    bool is_whole_range =
        false;  ///< the curve over all that is accepted instead of what people own
    bool operator==(const TuneQuestion&) const = default;
};

struct TuneStudy {
    Setup setup;  ///< as it was studied
    TuneQuestion question;
    Tunable tunable;
    TunedResult now{};  ///< of the setup as it is
    TuneCurve curve{};
    std::optional<TuneAnswer> answer{};  ///< over all that is accepted, whatever the curve shows
    std::vector<Sensitivity> changes{};
    bool has_changes = false;  ///< false: the table was not asked for yet
};

/// Curve and answer. Errors: the setup makes no train, or has no such number to vary.
Result<TuneStudy> study_tuning(const Setup& setup,
                               const Choice& choice,
                               const TuneQuestion& question,
                               TuneEffort effort = {},
                               const GivenUp& is_given_up = {});

}  // namespace beamfork
