#include "study/tune/tune.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "study/image/image_quality.hpp"
#include "study/light/clipping.hpp"
#include "study/light/magnification.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::array<WatchedInfo, 9> all_watched{
    WatchedInfo{Watched::margin, "margin", "Focus margin",
                "Travel left between focus and the nearer end of the drawtube, mm; negative is the "
                "shortfall. From the focus budget: back focus less every part's light path.",
                FieldUnit::millimetre, 1, 1e-6, false},
    WatchedInfo{
        Watched::factor, "factor", "Shifter's real factor",
        "How much the focus shifters magnify: 1 − d/f each, d from the lens to the image, f its "
        "focal length, negative for a lens that spreads light (thin-lens equation).",
        FieldUnit::times, 3, 1e-6, false},
    WatchedInfo{
        Watched::magnification, "magnification", "Magnification",
        "Effective focal length over the eyepiece's focal length (W. J. Smith, Modern Optical "
        "Engineering, 4th ed., sec. 13.1).",
        FieldUnit::times, 1, 1e-6, false},
    WatchedInfo{Watched::true_field, "true_field", "True field",
                "How wide a piece of sky is seen: 2 atan(field stop / (2 effective focal length)).",
                FieldUnit::degree, 3, 1e-6, false},
    WatchedInfo{Watched::exit_pupil, "exit_pupil", "Exit pupil",
                "Width of the light that leaves each eyepiece: aperture over magnification (W. J. "
                "Smith, Eq. 13.5).",
                FieldUnit::millimetre, 2, 1e-6, false},
    WatchedInfo{
        Watched::edge_light, "edge_light", "Light at the field's edge",
        "Share of the telescope's light that arrives at the rim of the field stop, by traced "
        "rays; the darker eye counts.",
        FieldUnit::percent, 1, 0.5, true},
    WatchedInfo{
        Watched::fully_lit, "fully_lit", "Fully lit diameter",
        "Middle of the field stop where no opening takes light, by rays along the pupil's rim; "
        "the smaller of both eyes.",
        FieldUnit::millimetre, 2, 0.05, true},
    WatchedInfo{
        Watched::working_aperture, "working_aperture", "Working aperture",
        "Aperture that gathers as much light on axis as gets through all openings, by traced "
        "rays; the smaller of both eyes.",
        FieldUnit::millimetre, 1, 0.3, true},
    WatchedInfo{
        Watched::sharpness, "strehl", "Peak of a star (Strehl)",
        "Height of a star's peak on axis over that of a perfect image, in white light at best "
        "focus, by the diffraction integral; the worse eye counts.",
        FieldUnit::percent, 1, 0.1, true},
};

// Weights, and room around the telescope: nothing that is watched here depends on them.
bool bears_on_light(const FieldInfo& field) {
    constexpr std::array apart{"balance_point_mm", "counterweight_distance_mm", "free_behind_mm"};
    return field.type != FieldType::choice && field.unit != FieldUnit::gram
           && std::find(apart.begin(), apart.end(), field.key) == apart.end();
}

bool is_drawtube(const Part& part, const FieldInfo& field) {
    return role_of(part) == Role::focuser && field.key == "held_at_mm";
}

// The parts whose numbers count, in order.
std::vector<std::size_t> tuned_parts(const Setup& setup, const Choice& choice) {
    auto parts = parts_in_light(setup, choice);
    parts.push_back(choice.observer);
    parts.push_back(choice.target);
    return parts;
}

bool can_vary(const Part& part, const FieldInfo& field) {
    if (!bears_on_light(field) || !is_relevant(part.body, field)) return false;
    const auto value = field_value(part.body, field.key);
    return (value && std::holds_alternative<double>(*value)) || is_drawtube(part, field);
}

template <class OfEye>
double worse_of_both(const OfEye& of_eye) {
    return std::min(of_eye(Eye::left), of_eye(Eye::right));
}

// Errors of the train aside, which only the caller can tell.
std::optional<double>
traced_result(const Setup& setup, const Train& train, Watched watched, TuneEffort effort) {
    const ClippingEffort rays{effort.rays};
    switch (watched) {
    case Watched::edge_light:
        return worse_of_both([&](Eye eye) { return 100 * middle_and_edge(train, eye, rays).edge; });
    case Watched::working_aperture:
        return worse_of_both(
            [&](Eye eye) { return middle_and_edge(train, eye, rays).working_aperture; });
    case Watched::fully_lit:
        return worse_of_both([&](Eye eye) { return fully_illuminated_diameter(train, eye); });
    default: break;
    }
    const auto left = day_peak_on_axis(setup, train, Eye::left);
    const auto right = day_peak_on_axis(setup, train, Eye::right);
    if (!left || !right) return std::nullopt;
    return 100 * std::min(*left, *right);
}

}  // namespace

std::span<const WatchedInfo> watched_results() { return all_watched; }

const WatchedInfo& info_of(Watched watched) {
    return all_watched.at(static_cast<std::size_t>(watched));
}

Result<Watched> find_watched(std::string_view key) {
    std::vector<std::string> known;
    for (const WatchedInfo& info : all_watched) {
        if (info.key == key) return info.watched;
        known.emplace_back(info.key);
    }
    const auto near = nearest_name(key, known);
    return fail(ErrorCode::not_found, fmt::format("no result is called '{}'{}", key,
                                                  near ? "; did you mean '" + *near + "'?" : ""));
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
                             number != nullptr ? *number : budget->drawtube,
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
    const auto near = nearest_name(name, names);
    return fail(ErrorCode::not_found,
                fmt::format("nothing that can be varied is called '{}'{}", name,
                            near ? "; did you mean '" + *near + "'?" : ""));
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
                    [](const ShifterAtWork& one) { return one.image_distance <= 0; });
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
    case Watched::exit_pupil: result.value = magnified.exit_pupil; break;
    default: result.value = result.margin;
    }
    return result;
}

}  // namespace beamfork
