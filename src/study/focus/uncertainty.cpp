#include "study/focus/uncertainty.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>

#include "base/two_at_a_time.hpp"

namespace beamfork {

namespace {

constexpr double least_slope = 1e-6;  // a value that changes less does not bear on focus

// Moves one value of a setup and looks where focus goes. Putting the value back costs less than a copy of all.
class Nudge {
public:
    Nudge(const Setup& setup, const Choice& choice, Millimetres margin)
        : setup_(setup), choice_(choice), margin_(margin) {}

    // mm of inward margin per unit of the value, stated for it if it is not; one-sided where the field does not allow both ways.
    Result<double> slope(std::size_t part, const FieldInfo& field) {
        const double value = *number_that_counts(setup_.parts[part].body, field.key);
        const double step = 1e-3 * std::max(1.0, std::abs(value) / 100);
        const double low = std::max(field.low, value - step);
        const double high = std::min(field.high, value + step);
        if (high <= low) return 0.0;
        const double first = high > value ? high : low;
        const auto moved = margin_at(part, field, first);
        if (!moved) return tl::make_unexpected(moved.error());
        // Most values, such as a clear diameter, do nothing at all: no second look.
        if (abs(*moved - margin_).value < least_slope * std::abs(first - value)) return 0.0;
        const auto other =
            first == low ? Result<Millimetres>(margin_) : margin_at(part, field, low);
        if (!other) return tl::make_unexpected(other.error());
        return (*moved - *other).value / (first == low ? low - value : high - low);
    }

private:
    Result<Millimetres> margin_at(std::size_t part, const FieldInfo& field, double value) {
        auto body = with_field_unchecked(setup_.parts[part].body, field.key, value);
        if (!body) return tl::make_unexpected(body.error());
        std::swap(setup_.parts[part].body, *body);
        const auto budget = solved_focus(setup_, choice_);
        std::swap(setup_.parts[part].body, *body);
        if (!budget) return tl::make_unexpected(budget.error());
        return budget->margin_in;
    }

    Setup setup_;
    const Choice& choice_;
    Millimetres margin_;
};

// A number that is stated, or a usual one in its place: what is derived is as sure as what it is derived from.
bool is_number(const Part& part, const FieldInfo& field) {
    if (field.type == FieldType::choice || !number_that_counts(part.body, field.key)) return false;
    const auto taken = taken_value(part.body, field.key);
    return !taken || !taken->is_derived();
}

bool is_travel(const Setup& setup, const Contribution& one) {
    return role_of(setup.parts[one.part]) == Role::focuser && one.key == "travel_mm";
}

// How the margins spread. The travel bears on the outward one alone.
struct MarginSpread {
    Millimetres shift;  ///< of the middle of the inward margin, against the stated one
    ChanceCurve inward;
    ChanceCurve outward;
};

MarginSpread spread_of(const Setup& setup, const Uncertainty& found) {
    Millimetres shift;
    std::vector<double> halves;  // mm, as all of it
    double normal = 0;
    std::vector<double> travel_half;
    double travel_normal = 0;
    for (const Contribution& one : found.contributions) {
        const bool is_drawtubes = is_travel(setup, one);
        if (!is_drawtubes) shift += one.shift;
        if (one.tolerance.known_by == KnownBy::measured) {
            double& into = is_drawtubes ? travel_normal : normal;
            into = std::hypot(into, one.standard.value);
        } else {
            (is_drawtubes ? travel_half : halves)
                .push_back(one.standard.value * std::numbers::sqrt3);
        }
    }
    std::vector<double> all = halves;
    all.insert(all.end(), travel_half.begin(), travel_half.end());
    return {shift, ChanceCurve(std::move(halves), normal),
            ChanceCurve(std::move(all), std::hypot(normal, travel_normal))};
}

struct ReachChance {
    double too_far_in = 0;
    double too_far_out = 0;
    [[nodiscard]] double reaches() const {
        return std::clamp(1 - too_far_in - too_far_out, 0.0, 1.0);
    }
};

// Of a drawtube (or primary) with these margins as stated.
ReachChance chance_of(const Setup& setup, const Uncertainty& found) {
    const MarginSpread spread = spread_of(setup, found);
    const Millimetres in = found.drawtube + spread.shift;
    const Millimetres out = found.travel - found.drawtube - spread.shift;
    return {spread.inward.below(-in.value), spread.outward.below(-out.value)};
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
    Contribution& known = then.contributions.front();
    known.standard = {std::abs(largest.sensitivity) * attained};
    known.tolerance = {attained, KnownBy::measured};
    known.shift = {};
    found.better = BetterKnown{attained, chance_of(setup, then).reaches()};
}

// Parts whose values bear on focus: those in the light, the observer and the target.
std::vector<std::size_t> parts_that_count(const Setup& setup, const Choice& choice) {
    auto parts = parts_in_light(setup, choice);
    parts.push_back(choice.observer);
    parts.push_back(choice.target);
    return parts;
}

// "None of it": a cell without length, a mirror that was not moved. Nobody reads that off a ruler.
bool is_none(const Part& part, const FieldInfo& field) {
    return field.low == 0 && field_value(part.body, field.key) == FieldValue{0.0};
}

// How well that value is known, with a number; nothing when it is exact.
std::optional<Tolerance> tolerance_of(const Part& part, const FieldInfo& field) {
    const auto stated = part.tolerances.find(field.key);
    if (stated == part.tolerances.end()) {
        const auto known_by =
            taken_value(part.body, field.key) ? KnownBy::guessed : KnownBy::datasheet;
        return is_none(part, field) ? std::nullopt : assumed_tolerance(field, known_by);
    }
    if (stated->second.plus_minus) return stated->second;
    return assumed_tolerance(field, stated->second.known_by);
}

bool says_plus_minus(const Part& part, const FieldInfo& field) {
    const auto stated = part.tolerances.find(field.key);
    return stated != part.tolerances.end() && stated->second.plus_minus;
}

// Where a value that is not measured may lie: within +-, but nowhere that its field does not accept.
std::pair<double, double>
range_of(const Tolerance& tolerance, const FieldInfo& field, double stated) {
    return {std::max(field.low, stated - *tolerance.plus_minus),
            std::min(field.high, stated + *tolerance.plus_minus)};
}

void spread_within(Contribution& one, const FieldInfo& field, double stated) {
    one.standard = {std::abs(one.sensitivity) * one.tolerance.standard()};
    if (one.tolerance.known_by == KnownBy::measured) return;
    const auto [low, high] = range_of(one.tolerance, field, stated);
    one.standard = {std::abs(one.sensitivity) * (high - low) / 2 / std::numbers::sqrt3};
    one.shift = {one.sensitivity * ((low + high) / 2 - stated)};
}

// All values that move the focus and are not exact.
Result<std::vector<Contribution>>
contributions(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    std::vector<Contribution> found;
    Nudge nudge(setup, choice, budget.margin_in);
    for (const std::size_t index : parts_that_count(setup, choice)) {
        const Part& part = setup.parts[index];
        for (const FieldInfo& field : kind_of(part.body).fields) {
            if (!is_number(part, field) || !is_relevant(part.body, field)) continue;
            const auto tolerance = tolerance_of(part, field);
            if (!tolerance) continue;
            Contribution one{index, field.key, field.label, field.unit, *tolerance};
            one.is_assumed = !says_plus_minus(part, field);
            one.sensitivity = 1;
            if (!is_travel(setup, one)) {
                const auto slope = nudge.slope(index, field);
                if (!slope) return tl::make_unexpected(slope.error());
                one.sensitivity = *slope;
            } else if (budget.primary && budget.is_held) {
                continue;  // the drawtube is not what focuses
            }
            if (std::abs(one.sensitivity) < least_slope) continue;
            spread_within(one, field, *number_that_counts(part.body, field.key));
            found.push_back(std::move(one));
        }
    }
    return found;
}

// Who makes the smaller margin unsure, and by how much it is.
void share_out(const Setup& setup, Uncertainty& found, bool is_inward) {
    const auto variance_of = [&](const Contribution& one) {
        return is_inward && is_travel(setup, one) ? 0 : one.standard.value * one.standard.value;
    };
    double variance = 0;
    for (const Contribution& one : found.contributions)
        variance += variance_of(one);
    found.standard = {std::sqrt(variance)};
    for (Contribution& one : found.contributions)
        one.share = variance > 0 ? variance_of(one) / variance : 0;
    std::stable_sort(
        found.contributions.begin(), found.contributions.end(),
        [](const Contribution& a, const Contribution& b) { return a.share > b.share; });
}

}  // namespace

Result<Uncertainty>
uncertainty(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    Uncertainty found;
    found.drawtube = budget.margin_in;
    found.travel = budget.margin_in + budget.margin_out;
    found.is_by_mirror = budget.primary.has_value();
    found.margin = std::min(budget.margin_in, budget.margin_out);
    found.too_far_in = budget.margin_in < -exact_fit ? 1 : 0;
    found.too_far_out = budget.margin_out < -exact_fit ? 1 : 0;
    found.probability = 1 - std::max(found.too_far_in, found.too_far_out);
    auto values = contributions(setup, choice, budget);
    if (!values) return tl::make_unexpected(values.error());
    found.contributions = *std::move(values);
    found.assumed = static_cast<std::size_t>(
        std::count_if(found.contributions.begin(), found.contributions.end(),
                      [](const Contribution& one) { return one.is_assumed; }));
    if (found.contributions.empty()) return found;
    const ReachChance chance = chance_of(setup, found);
    found.too_far_in = chance.too_far_in;
    found.too_far_out = chance.too_far_out;
    found.probability = chance.reaches();
    share_out(setup, found, budget.margin_in <= budget.margin_out);
    find_better(setup, found);
    return found;
}

namespace {

// The same numbers from every library: std's distributions differ between them.
class Draws {
public:
    explicit Draws(std::uint64_t seed) : engine_(seed) {}
    double even() { return (static_cast<double>(engine_() >> 11U) + 0.5) * 0x1p-53; }
    double of(const Tolerance& tolerance, const FieldInfo& field, double stated) {
        const double first = even();
        if (tolerance.known_by != KnownBy::measured) {
            const auto [low, high] = range_of(tolerance, field, stated);
            return std::lerp(low, high, first);
        }
        // G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29, 610-611, 1958.
        const double off = *tolerance.plus_minus * std::sqrt(-2 * std::log(first))
                           * std::cos(2 * std::numbers::pi * even());
        return std::clamp(stated + off, field.low, field.high);
    }

private:
    std::mt19937_64 engine_;
};

// The values of one setup drawn at random, in the order of the contributions.
using DrawnValues = std::vector<double>;

std::vector<DrawnValues> drawn_values(const Setup& setup,
                                      const std::vector<Contribution>& values,
                                      int samples,
                                      std::uint64_t seed) {
    Draws draws(seed);
    std::vector<DrawnValues> drawn(static_cast<std::size_t>(samples));
    for (DrawnValues& one : drawn) {
        for (const Contribution& value : values) {
            const PartBody& body = setup.parts[value.part].body;
            const auto& fields = kind_of(body).fields;
            const auto field =
                std::find_if(fields.begin(), fields.end(),
                             [&](const FieldInfo& info) { return info.key == value.key; });
            const double counts = *number_that_counts(body, value.key);
            one.push_back(draws.of(value.tolerance, *field, counts));
        }
    }
    return drawn;
}

Result<bool> reaches_with(Setup& setup,
                          const Choice& choice,
                          const std::vector<Contribution>& values,
                          const DrawnValues& drawn) {
    for (std::size_t i = 0; i < values.size(); ++i) {
        PartBody& body = setup.parts[values[i].part].body;
        auto changed = with_field_unchecked(body, values[i].key, drawn[i]);
        if (!changed) return tl::make_unexpected(changed.error());
        body = *std::move(changed);
    }
    const auto budget = solved_focus(setup, choice);
    if (!budget) return tl::make_unexpected(budget.error());
    return std::min(budget->margin_in, budget->margin_out) >= -exact_fit;
}

}  // namespace

Result<double>
sampled_probability(const Setup& setup, const Choice& choice, int samples, std::uint64_t seed) {
    BEAMFORK_EXPECTS(samples > 0);
    const auto stated = focus_budget(setup, choice);
    if (!stated) return tl::make_unexpected(stated.error());
    const auto values = contributions(setup, choice, *stated);
    if (!values) return tl::make_unexpected(values.error());
    const auto drawn = drawn_values(setup, *values, samples, seed);
    std::array<Result<int>, 2> reached{0, 0};
    two_at_a_time(reached.size(), [&](std::size_t half) {
        Setup one = setup;
        for (std::size_t i = half; i < drawn.size() && reached[half]; i += reached.size()) {
            const auto reaches = reaches_with(one, choice, *values, drawn[i]);
            if (!reaches) {
                reached[half] = tl::make_unexpected(reaches.error());
            } else if (*reaches) {
                ++*reached[half];
            }
        }
    });
    for (const auto& half : reached) {
        if (!half) return tl::make_unexpected(half.error());
    }
    return static_cast<double>(*reached[0] + *reached[1]) / samples;
}

ChanceCurve margin_curve(const Setup& setup, const Uncertainty& found) {
    return spread_of(setup, found).inward;
}

std::string home_measurement(const PartBody& body, const std::string& key) {
    const auto& fields = kind_of(body).fields;
    const auto field = std::find_if(fields.begin(), fields.end(),
                                    [&](const FieldInfo& info) { return info.key == key; });
    BEAMFORK_EXPECTS(field != fields.end());
    return std::string(field->measured_by);
}

}  // namespace beamfork
