#include "study/tune/tune_study.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace beamfork {

Result<TuneStudy> study_tuning(const Setup& setup,
                               const Choice& choice,
                               const TuneQuestion& question,
                               TuneEffort effort,
                               const GivenUp& is_given_up) {
    auto now = tuned_result(setup, choice, question.watched, effort);
    if (!now) return tl::make_unexpected(std::move(now.error()));
    const auto known = tunables(setup, choice);
    const auto found = std::find_if(known.begin(), known.end(), [&](const Tunable& one) {
        return one.varied == question.varied;
    });
    if (found == known.end())
        return fail(ErrorCode::not_found,
                    fmt::format("{} is no number that can be varied here", question.varied.key));
    TuneStudy study{.setup = setup, .question = question, .tunable = *found, .now = *now};
    Tuner tuner(setup, choice, question.varied, question.watched, effort);
    constexpr int steps = 60;
    const TuneRange accepted = accepted_range_of(*found);
    const TuneRange shown = question.is_whole_range ? accepted : usual_range(*found);
    study.curve = tune_curve(tuner, shown, steps, is_given_up);
    if (!question.wanted) return study;
    // A finer look where the range is much wider than the one that is shown.
    study.answer = shown == accepted
                       ? solve_for(tuner, study.curve, *question.wanted, is_given_up)
                       : solve_for(tuner, tune_curve(tuner, accepted, 2 * steps, is_given_up),
                                   *question.wanted, is_given_up);
    return study;
}

}  // namespace beamfork
