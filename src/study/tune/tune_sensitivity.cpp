#include "study/tune/tune_sensitivity.hpp"

#include <algorithm>
#include <cmath>

namespace beamfork {

bool Sensitivity::is_bent() const {
    return std::abs(up - down) > 0.2 * std::max(std::abs(up), std::abs(down));
}

double Sensitivity::step() const { return tunable.field.unit == FieldUnit::times ? 0.1 : 1; }

namespace {

// Half of what is differenced over, in the number's unit.
double half_step(const Tunable& tunable, const WatchedInfo& watched) {
    if (!watched.is_traced) return 1e-3 * std::max(1.0, std::abs(tunable.now) / 100);
    return tunable.field.unit == FieldUnit::times || tunable.field.unit == FieldUnit::none ? 0.1
                                                                                           : 1;
}

double least_told(const WatchedInfo& watched) { return watched.is_traced ? watched.grain : 1e-6; }

std::optional<Sensitivity> sensitivity_of(Tuner& tuner, const Tunable& tunable, double now) {
    const double step = half_step(tunable, tuner.watched());
    const double high = std::min(tunable.field.high, tunable.now + step);
    const double low = std::max(tunable.field.low, tunable.now - step);
    const auto slope = [&](double at) -> std::optional<double> {
        if (at == tunable.now) return std::nullopt;
        const auto value = tuner.at(at).value;
        return value ? std::optional((*value - now) / (at - tunable.now)) : std::nullopt;
    };
    const auto up = slope(high);
    // Most numbers do nothing at all: no second look.
    if (up && *up == 0 && !tuner.watched().is_traced) return std::nullopt;
    const auto down = slope(low);
    if (!up && !down) return std::nullopt;
    Sensitivity found{tunable, 0, up.value_or(down.value_or(0)), down.value_or(up.value_or(0))};
    found.per_unit = up && down
                         ? (*up * (high - tunable.now) + *down * (tunable.now - low)) / (high - low)
                         : found.up;
    const double least = least_told(tuner.watched());
    if (std::abs(found.per_unit) < least && std::abs(found.up) < least
        && std::abs(found.down) < least)
        return std::nullopt;
    return found;
}

}  // namespace

std::vector<Sensitivity> sensitivities(const Setup& setup,
                                       const Choice& choice,
                                       Watched watched,
                                       TuneEffort effort,
                                       const GivenUp& is_given_up) {
    const auto now = tuned_result(setup, choice, watched, effort);
    if (!now || !now->value) return {};
    std::vector<Sensitivity> found;
    for (const Tunable& tunable : tunables(setup, choice)) {
        if (is_given_up && is_given_up()) break;
        if (!tunable.is_stated) continue;  // a drawtube that focuses is no number of its own
        Tuner tuner(setup, choice, tunable.varied, watched, effort);
        if (auto one = sensitivity_of(tuner, tunable, *now->value))
            found.push_back(*std::move(one));
    }
    std::stable_sort(found.begin(), found.end(), [](const Sensitivity& a, const Sensitivity& b) {
        return std::abs(a.per_step()) > std::abs(b.per_step());
    });
    return found;
}

}  // namespace beamfork
