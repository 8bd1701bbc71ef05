#include "study/uncertainty.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace beamfork {

double normal_below_zero(double mean, double standard) {
    if (standard <= 0) return mean < 0 ? 1 : 0;
    return std::erfc(mean / standard / std::numbers::sqrt2) / 2;
}

namespace {

// The wanted drawtube position with one value moved; the other way round where the field does not allow it.
Result<double>
slope(const Setup& setup, const Choice& choice, std::size_t part, const FieldInfo& field) {
    const double value = std::get<double>(*field_value(setup.parts[part].body, field.key));
    const double step = 1e-3 * std::max(1.0, std::abs(value) / 100);
    const double low = std::max(field.low, value - step);
    const double high = std::min(field.high, value + step);
    Setup moved = setup;
    std::array<double, 2> drawtube{};
    const std::array places{low, high};
    for (std::size_t i = 0; i < 2; ++i) {
        auto body = with_field_unchecked(setup.parts[part].body, field.key, places[i]);
        if (!body) return tl::make_unexpected(body.error());
        moved.parts[part].body = *std::move(body);
        const auto budget = focus_budget(moved, choice);
        if (!budget) return tl::make_unexpected(budget.error());
        drawtube[i] = budget->wanted_drawtube;
    }
    return high > low ? (drawtube[1] - drawtube[0]) / (high - low) : 0.0;
}

bool is_number(const Part& part, const FieldInfo& field) {
    if (field.type == FieldType::choice) return false;
    const auto value = field_value(part.body, field.key);
    return value && std::holds_alternative<double>(*value);
}

struct DrawtubeSpread {
    double mean = 0;      ///< of the wanted drawtube position
    double drawtube = 0;  ///< its standard deviation
    double travel_mean = 0;
    double travel = 0;  ///< standard deviation of the travel
    [[nodiscard]] double too_far_in() const { return normal_below_zero(mean, drawtube); }
    [[nodiscard]] double too_far_out() const {
        return normal_below_zero(travel_mean - mean, std::hypot(drawtube, travel));
    }
    [[nodiscard]] double reaches() const {
        return std::clamp(1 - too_far_in() - too_far_out(), 0.0, 1.0);
    }
};

bool is_travel(const Setup& setup, const Contribution& one) {
    return role_of(setup.parts[one.part]) == Role::focuser && one.key == "travel_mm";
}

DrawtubeSpread spread_of(const Setup& setup, const Uncertainty& found) {
    DrawtubeSpread spread{found.drawtube, 0, found.travel, 0};
    for (const Contribution& one : found.contributions) {
        double& into = is_travel(setup, one) ? spread.travel : spread.drawtube;
        into = std::hypot(into, one.standard);
    }
    return spread;
}

// What careful measuring at home attains. Common practice, no source.
double attainable(FieldUnit unit) {
    switch (unit) {
    case FieldUnit::times: return 0.02;
    case FieldUnit::dioptre: return 0.1;
    case FieldUnit::metre: return 0.1;
    default: break;
    }
    return 0.2;
}

void find_better(const Setup& setup, Uncertainty& found) {
    if (found.contributions.empty()) return;
    const Contribution& largest = found.contributions.front();
    const double attained = attainable(largest.unit);
    if (largest.tolerance.standard() <= attained) return;
    Uncertainty then = found;
    then.contributions.front().standard = std::abs(largest.sensitivity) * attained;
    found.better = BetterKnown{attained, spread_of(setup, then).reaches()};
}

// Parts whose values bear on focus: those in the light, the observer and the target.
std::vector<std::size_t> parts_that_count(const Setup& setup, const Choice& choice) {
    auto parts = parts_in_light(setup, choice);
    parts.push_back(choice.observer);
    parts.push_back(choice.target);
    return parts;
}

Result<void> study_value(const Setup& setup,
                         const Choice& choice,
                         std::size_t index,
                         const FieldInfo& field,
                         Uncertainty& found) {
    const Part& part = setup.parts[index];
    const auto stated = part.tolerances.find(field.key);
    const bool is_travel_field = role_of(part) == Role::focuser && field.key == "travel_mm";
    constexpr double least = 1e-6;  // a value that changes less does not bear on focus
    double sensitivity = is_travel_field ? 1 : 0;
    if (!is_travel_field) {
        const auto found_slope = slope(setup, choice, index, field);
        if (!found_slope) return tl::make_unexpected(found_slope.error());
        sensitivity = *found_slope;
    }
    if (std::abs(sensitivity) < least) return {};
    if (stated == part.tolerances.end()) {
        if (field.unit == FieldUnit::millimetre) ++found.not_stated;
        return {};
    }
    Contribution one{index, field.key, field.label, field.unit, stated->second, sensitivity};
    one.standard = std::abs(sensitivity) * one.tolerance.standard();
    found.contributions.push_back(std::move(one));
    return {};
}

}  // namespace

Result<Uncertainty>
uncertainty(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    Uncertainty found;
    found.drawtube = budget.wanted_drawtube;
    found.travel = budget.travel;
    found.margin = std::min(budget.margin_in, budget.margin_out);
    found.probability = budget.reaches ? 1 : 0;
    found.too_far_in = budget.margin_in < 0 ? 1 : 0;
    found.too_far_out = 1 - found.probability - found.too_far_in;
    const auto parts = parts_that_count(setup, choice);
    const bool says_nothing = std::all_of(parts.begin(), parts.end(), [&](std::size_t index) {
        return setup.parts[index].tolerances.empty();
    });
    if (says_nothing) return found;  // and costs nothing
    for (const std::size_t index : parts) {
        const Part& part = setup.parts[index];
        for (const FieldInfo& field : kind_of(part.body).fields) {
            if (!is_number(part, field) || !is_relevant(part.body, field)) continue;
            if (auto done = study_value(setup, choice, index, field, found); !done)
                return tl::make_unexpected(done.error());
        }
    }
    const DrawtubeSpread spread = spread_of(setup, found);
    const bool is_inward = budget.margin_in <= budget.margin_out;
    found.standard = is_inward ? spread.drawtube : std::hypot(spread.drawtube, spread.travel);
    if (found.contributions.empty()) return found;
    found.too_far_in = spread.too_far_in();
    found.too_far_out = spread.too_far_out();
    found.probability = spread.reaches();
    double variance = 0;
    for (const Contribution& one : found.contributions)
        variance += one.standard * one.standard;
    for (Contribution& one : found.contributions)
        one.share = one.standard * one.standard / variance;
    std::stable_sort(
        found.contributions.begin(), found.contributions.end(),
        [](const Contribution& a, const Contribution& b) { return a.share > b.share; });
    find_better(setup, found);
    return found;
}

namespace {

// The same numbers from every library: std's distributions differ between them.
class Draws {
public:
    explicit Draws(std::uint64_t seed) : engine_(seed) {}
    double even() { return (static_cast<double>(engine_() >> 11U) + 0.5) * 0x1p-53; }
    double of(const Tolerance& tolerance) {
        const double first = even();
        if (tolerance.known_by != KnownBy::measured) return (2 * first - 1) * tolerance.plus_minus;
        // G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29, 610-611, 1958.
        return tolerance.plus_minus * std::sqrt(-2 * std::log(first))
               * std::cos(2 * std::numbers::pi * even());
    }

private:
    std::mt19937_64 engine_;
};

Result<PartBody> drawn(const Part& part, Draws& draws) {
    PartBody body = part.body;
    for (const FieldInfo& field : kind_of(part.body).fields) {
        const auto stated = part.tolerances.find(field.key);
        if (stated == part.tolerances.end() || !is_number(part, field)
            || !is_relevant(part.body, field))
            continue;
        const double value = std::get<double>(*field_value(part.body, field.key));
        const double moved = std::clamp(value + draws.of(stated->second), field.low, field.high);
        auto changed = with_field_unchecked(body, field.key, moved);
        if (!changed) return changed;
        body = *std::move(changed);
    }
    return body;
}

}  // namespace

Result<double>
sampled_probability(const Setup& setup, const Choice& choice, int samples, std::uint64_t seed) {
    BEAMFORK_EXPECTS(samples > 0);
    Draws draws(seed);
    Setup one = setup;
    int reached = 0;
    for (int i = 0; i < samples; ++i) {
        for (const std::size_t index : parts_that_count(setup, choice)) {
            auto body = drawn(setup.parts[index], draws);
            if (!body) return tl::make_unexpected(body.error());
            one.parts[index].body = *std::move(body);
        }
        const auto budget = focus_budget(one, choice);
        if (!budget) return tl::make_unexpected(budget.error());
        if (budget->reaches) ++reached;
    }
    return static_cast<double>(reached) / samples;
}

std::string home_measurement(const PartBody& body, const std::string& key) {
    if (key == "back_focus_mm")
        return "Rack the drawtube in, point at the Moon, and measure from the drawtube's rear face "
               "to a paper screen on which it is sharp.";
    if (key == "travel_mm") return "Measure the drawtube with a ruler, racked in and racked out.";
    if (key == "field_stop_depth_mm")
        return "Measure with the depth rod of calipers from the shoulder to the field stop.";
    const Role role = kind_of(body).role;
    if (std::holds_alternative<Shifter>(body))
        return "Focus with and without the shifter at a scale far off: the drawtube's travel "
               "between is the gain, the ratio of the fields is the factor.";
    if (key == "stated_light_path_mm" || role == Role::splitter
        || std::holds_alternative<PrismDiagonal>(body))
        return "Focus one eyepiece with this part and without it: the drawtube's travel between is "
               "its light path.";
    if (role == Role::observer) return "Take it from a new spectacle prescription.";
    return "Measure it with calipers.";
}

}  // namespace beamfork
