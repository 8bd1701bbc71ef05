#include <algorithm>
#include <cmath>

#include "study/findings/finding_scope.hpp"
#include "study/focus/diffraction.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// What the change asks of whatever focuses: "the drawtube 3.5 mm farther in".
std::string refocus_words(const FocusBudget& budget, const DistanceChange& change) {
    if (budget.primary) {
        return fmt::format("{:.1f} mm {} back focus from the main mirror",
                           abs(change.refocus).value,
                           change.refocus < Millimetres{} ? "more" : "less");
    }
    return fmt::format("the drawtube {:.1f} mm farther {}", abs(change.refocus).value,
                       change.refocus < Millimetres{} ? "in" : "out");
}

std::string seat_words(const DistanceCoupling& coupling, const DistanceChange& change) {
    if (!change.seats_suffice) {
        return fmt::format("the seats' ±{:.1f} mm cannot take it beside the correction of the eyes",
                           coupling.seat_travel.value);
    }
    return fmt::format("or leave it and move both seats {:.1f} mm {}", abs(change.path).value,
                       change.path > Millimetres{} ? "in" : "out");
}

// "Refocus by 0.50 mm per mm of pupil distance, inward when the arms go apart."
std::string rule_words(const FocusBudget& budget, const DistanceCoupling& coupling) {
    const double each = std::abs(coupling.refocus_per_mm);
    if (budget.primary) {
        return fmt::format(
            "Refocus the main mirror after each change of observer: {:.2f} mm {} back focus "
            "per mm wider.",
            each, coupling.refocus_per_mm < 0 ? "more" : "less");
    }
    return fmt::format(
        "Refocus after each change of observer: the drawtube goes {} by {:.2f} mm per mm wider.",
        coupling.refocus_per_mm < 0 ? "in" : "out", each);
}

void whole_range_finding(const FindingScope& scope) {
    const DistanceCoupling& coupling = scope.report.distance;
    const DistanceChange& narrowest = coupling.ends.front();
    const DistanceChange& widest = coupling.ends.back();
    std::string advice = rule_words(scope.report.budget, coupling);
    if (scope.report.budget.reaches) {
        const DistanceChange& worse = narrowest.missing > widest.missing ? narrowest : widest;
        advice += worse.reaches
                      ? " Focus stays within reach at every setting of the head."
                      : fmt::format(" Set to {:.1f} mm, focus would lie {:.1f} mm out of reach.",
                                    worse.distance.value, worse.missing.value);
    }
    scope.add(
        Severity::note, "distance_moves_focus",
        fmt::format("The head slides: each mm of pupil distance makes both arms {:.2f} mm {}; from "
                    "{:.1f} to {:.1f} mm that is {:.1f} mm of light path.",
                    std::abs(coupling.path_per_mm), coupling.path_per_mm > 0 ? "longer" : "shorter",
                    narrowest.distance.value, widest.distance.value,
                    abs(coupling.whole_range()).value),
        advice, scope.index_of(Role::splitter));
}

void refocus_finding(const FindingScope& scope, const DistanceChange& change) {
    const FocusBudget& budget = scope.report.budget;
    const char* const focuses = budget.primary ? "main mirror" : "drawtube";
    const std::string seats = seat_words(scope.report.distance, change);
    scope.add(
        Severity::note, "distance_refocus",
        fmt::format("From {} to {} the head is set {:.1f} mm {}, which makes each arm {:.1f} "
                    "mm {}: focus wants {}.",
                    scope.name(scope.report.train.choice.observer), scope.name(*change.observer),
                    abs(change.wider).value, change.wider > Millimetres{} ? "wider" : "narrower",
                    abs(change.path).value, change.path > Millimetres{} ? "longer" : "shorter",
                    refocus_words(budget, change)),
        change.reaches ? fmt::format("Refocus with the {} after the change; {}.", focuses, seats)
                       : fmt::format("The {} stops {:.1f} mm short of that; {}.", focuses,
                                     change.missing.value, seats),
        scope.index_of(Role::splitter));
}

void out_of_travel_finding(const FindingScope& scope, const DistanceChange& change) {
    const bool by_mirror = scope.report.budget.primary.has_value();
    scope.add(Severity::poor, "distance_out_of_travel",
              fmt::format("Set to {:.1f} mm for {}, the head puts focus {:.1f} mm farther {} than "
                          "the {} can follow.",
                          change.distance.value, scope.name(*change.observer), change.missing.value,
                          // Longer arms want the drawtube in, but the main mirror's image out.
                          change.missing_is_inward == by_mirror ? "out" : "in",
                          by_mirror ? "main mirror" : "drawtube"),
              change.seats_suffice
                  ? fmt::format("Leave the focus and move both seats {:.1f} mm {} instead.",
                                abs(change.path).value, change.path > Millimetres{} ? "in" : "out")
              : change.missing_is_inward
                  ? fmt::format("Save {:.1f} mm of light path, or use a head with a hinge.",
                                change.missing.value)
                  : fmt::format("Add a spacer of {:.1f} mm behind the drawtube for this observer.",
                                change.missing.value),
              scope.index_of(Role::splitter));
}

}  // namespace

void pupil_distance_findings(const FindingScope& scope) {
    const DistanceCoupling& coupling = scope.report.distance;
    if (coupling.path_per_mm == 0) return;
    whole_range_finding(scope);
    const Millimetres depth = depth_of_focus(scope.report.magnification.focal_ratio);
    const DistanceChange* farthest = nullptr;
    for (const DistanceChange& change : coupling.observers) {
        if (!change.reaches && scope.report.budget.reaches) out_of_travel_finding(scope, change);
        if (abs(change.path) <= depth) continue;
        if (farthest == nullptr || abs(change.path) > abs(farthest->path)) farthest = &change;
    }
    if (farthest != nullptr) refocus_finding(scope, *farthest);
}

}  // namespace beamfork
