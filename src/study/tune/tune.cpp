#include "study/tune/tune.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "study/image/image_quality.hpp"
#include "study/light/clipping.hpp"
#include "study/light/magnification.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

struct CountedGrain {
    double by_rays = 0;  // of a result that rays are counted for
};

// By rays it is dearer, and told from other values only as far as their counting allows.
WatchedInfo watched_as(Watched watched,
                       ResultId id,
                       std::string_view key,
                       std::optional<CountedGrain> counted = {}) {
    const ResultInfo& info = info_of(id);
    return {watched,
            key.empty() ? info.key : key,
            info.label,
            info.help,
            info.unit,
            info.fine_decimals,
            counted ? counted->by_rays : 1e-6,
            counted.has_value()};
}

std::array<WatchedInfo, 9> every_watched() {
    std::array all{
        watched_as(Watched::margin, ResultId::focus_margin, "margin"),
        watched_as(Watched::factor, ResultId::shifter_factor, "factor"),
        watched_as(Watched::magnification, ResultId::magnification, ""),
        watched_as(Watched::true_field, ResultId::true_field, ""),
        watched_as(Watched::exit_pupil, ResultId::exit_pupil, ""),
        watched_as(Watched::edge_light, ResultId::edge_light, "", CountedGrain{0.5}),
        watched_as(Watched::fully_lit, ResultId::fully_lit, "", CountedGrain{0.05}),
        watched_as(Watched::working_aperture, ResultId::working_aperture, "", CountedGrain{0.3}),
        watched_as(Watched::sharpness, ResultId::sharpness, "strehl", CountedGrain{0.1}),
    };
    all.back().label = "Peak of a star (Strehl)";
    all.back().help =
        "Height of a star's peak on axis over that of a perfect image, in white light (CIE 1924 "
        "V(lambda)) at best focus, before any eye looks; the worse eye counts.";
    return all;
}

// Left open, focus finds it.
bool is_drawtube(const FieldInfo& field) {
    return field.by_hand && field.by_hand->moves == HandMoves::drawtube;
}

// The parts whose numbers count, in order.
std::vector<std::size_t> tuned_parts(const Setup& setup, const Choice& choice) {
    auto parts = parts_in_light(setup, choice);
    parts.push_back(choice.observer);
    parts.push_back(choice.target);
    return parts;
}

bool can_vary(const Part& part, const FieldInfo& field) {
    if (field.type == FieldType::choice || !field.bears_on_light) return false;
    if (!is_relevant(part.body, field)) return false;
    const auto value = field_value(part.body, field.key);
    return (value && std::holds_alternative<double>(*value)) || is_drawtube(field);
}

template <class OfEye>
double worse_of_both(const OfEye& of_eye) {
    return std::min(of_eye(Eye::left), of_eye(Eye::right));
}

// Of the duller eye, percent; nothing where one of them has no image.
std::optional<double> white_peak(const Setup& setup, const Train& train) {
    const auto left = white_peak_on_axis(setup, train, Eye::left);
    const auto right = white_peak_on_axis(setup, train, Eye::right);
    if (!left || !right) return std::nullopt;
    return 100 * std::min(*left, *right);
}

// Errors of the train aside, which only the caller can tell.
std::optional<double>
traced_result(const Setup& setup, const Train& train, Watched watched, TuneEffort effort) {
    const ClippingEffort rays{effort.rays};
    switch (watched) {
    case Watched::sharpness: return white_peak(setup, train);
    case Watched::edge_light:
        return worse_of_both([&](Eye eye) { return 100 * middle_and_edge(train, eye, rays).edge; });
    case Watched::working_aperture:
        return worse_of_both(
            [&](Eye eye) { return middle_and_edge(train, eye, rays).working_aperture.value; });
    case Watched::fully_lit:
        return worse_of_both([&](Eye eye) { return fully_illuminated_diameter(train, eye).value; });
    case Watched::margin:
    case Watched::factor:
    case Watched::magnification:
    case Watched::true_field:
    case Watched::exit_pupil: break;  // follow from the focus alone
    }
    return std::nullopt;
}

}  // namespace

std::span<const WatchedInfo> watched_results() {
    static const auto all = every_watched();
    return all;
}

const WatchedInfo& info_of(Watched watched) {
    return watched_results()[static_cast<std::size_t>(watched)];
}

Result<Watched> find_watched(std::string_view key) {
    std::vector<std::string> known;
    for (const WatchedInfo& info : watched_results()) {
        if (info.key == key) return info.watched;
        known.emplace_back(info.key);
    }
    return fail(ErrorCode::not_found,
                fmt::format("no result is called '{}'{}", key, did_you_mean(key, known)));
}

std::vector<Tunable> tunables(const Setup& setup, const Choice& choice) {
    const auto budget = focus_budget(setup, choice);
    if (!budget) return {};
    std::vector<Tunable> found;
    for (const std::size_t index : tuned_parts(setup, choice)) {
        const Part& part = setup.parts[index];
        for (const FieldInfo& field : kind_of(part.body).fields) {
            if (!can_vary(part, field)) continue;
            const auto value = field_value(part.body, field.key);
            const auto* number = std::get_if<double>(&*value);
            found.push_back({{index, field.key},
                             field,
                             number != nullptr ? *number : budget->drawtube.value,
                             number != nullptr});
        }
    }
    return found;
}

bool is_tunable(const Setup& setup,
                const Choice& choice,
                std::size_t part,
                const FieldInfo& field) {
    const auto parts = tuned_parts(setup, choice);
    return std::find(parts.begin(), parts.end(), part) != parts.end()
           && can_vary(setup.parts[part], field);
}

std::string name_of(const Setup& setup, const Varied& varied) {
    return setup.parts.at(varied.part).name + "." + varied.key;
}

Result<Tunable>
find_tunable(const Setup& setup, std::span<const Tunable> known, std::string_view name) {
    std::vector<std::string> names;
    for (const Tunable& one : known) {
        names.push_back(name_of(setup, one.varied));
        if (names.back() == name) return one;
    }
    return fail(ErrorCode::not_found, fmt::format("nothing that can be varied is called '{}'{}",
                                                  name, did_you_mean(name, names)));
}

Result<Setup> with_value(const Setup& setup, const Varied& varied, double value) {
    auto body = with_field(setup.parts.at(varied.part).body, varied.key, value);
    if (!body) return tl::make_unexpected(std::move(body.error()));
    Setup changed = setup;
    changed.parts[varied.part].body = *std::move(body);
    return changed;
}

Result<TunedResult>
tuned_result(const Setup& setup, const Choice& choice, Watched watched, TuneEffort effort) {
    const auto budget = focus_budget(setup, choice);
    if (!budget) return tl::make_unexpected(budget.error());
    TunedResult result;
    result.margin = std::min(budget->margin_in, budget->margin_out);
    result.lens_in_glass = budget->lens_in_glass;
    const auto& shifters = budget->shifters;
    result.is_behind_image =
        std::any_of(shifters.begin(), shifters.end(),
                    [](const ShifterAtWork& one) { return one.image_distance <= Millimetres{}; });
    if (info_of(watched).is_traced) {
        const auto train = focused_train(setup, choice, *budget);
        if (!train) return tl::make_unexpected(train.error());
        result.value = traced_result(setup, *train, watched, effort);
        return result;
    }
    const Magnification magnified = magnification(setup, choice, *budget);
    switch (watched) {
    case Watched::factor: result.value = magnified.shifter_factor; break;
    case Watched::magnification: result.value = magnified.magnification; break;
    case Watched::true_field: result.value = magnified.true_field.value; break;
    case Watched::exit_pupil: result.value = magnified.exit_pupil.value; break;
    case Watched::margin: result.value = result.margin.value; break;
    case Watched::edge_light:
    case Watched::fully_lit:
    case Watched::working_aperture:
    case Watched::sharpness: break;  // traced: above
    }
    return result;
}

}  // namespace beamfork
