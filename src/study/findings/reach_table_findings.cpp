#include <algorithm>
#include <cmath>

#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string combination(const FindingScope& scope, const Choice& choice) {
    return fmt::format("“{}” for {} at {}", scope.name(choice.eyepiece),
                       scope.name(choice.observer), scope.name(choice.target));
}

void others_findings(const FindingScope& scope) {
    const ReachTable& table = scope.report.reach;
    const std::size_t short_ones = table.entries.size() - table.reaching();
    // The chosen combination has a finding of its own.
    if (short_ones == 0 || table.entries.size() == 1
        || (short_ones == 1 && !scope.report.budget.reaches))
        return;
    if (scope.report.budget.seats_lack > Millimetres{}) return;  // all share the head's arms
    const auto worst = std::max_element(
        table.entries.begin(), table.entries.end(),
        [](const ReachEntry& a, const ReachEntry& b) { return a.shortfall < b.shortfall; });
    scope.add(
        Severity::note, "reach_incomplete",
        fmt::format("{} of {} combinations of eyepieces, observer and target do not reach "
                    "focus; worst is {}, {:.1f} mm too far {}.",
                    short_ones, table.entries.size(), combination(scope, worst->choice),
                    worst->shortfall.value, worst->shortfall_is_inward ? "in" : "out"),
        worst->shortfall_is_inward
            ? fmt::format("Save {:.1f} mm of light path to serve them all.", worst->shortfall.value)
            : fmt::format("A spacer of {:.1f} mm would serve the farthest one.",
                          worst->shortfall.value),
        worst->choice.eyepiece);
}

void refocus_findings(const FindingScope& scope) {
    const ReachTable& table = scope.report.reach;
    const Choice& now = scope.report.train.choice;
    const ReachEntry* farthest = nullptr;
    for (const ReachEntry& entry : table.entries) {
        if (entry.choice.observer != now.observer || entry.choice.target != now.target) continue;
        if (!entry.is_parfocal
            && (farthest == nullptr || abs(entry.refocus) > abs(farthest->refocus)))
            farthest = &entry;
    }
    if (farthest == nullptr) return;
    scope.add(Severity::note, "not_parfocal",
              fmt::format("The eyepiece pairs are not parfocal: changing from “{}” to “{}” takes "
                          "{:.1f} mm of {}.",
                          scope.name(now.eyepiece), scope.name(farthest->choice.eyepiece),
                          abs(farthest->refocus).value,
                          table.by_primary                    ? "light path by the main mirror"
                          : farthest->refocus < Millimetres{} ? "drawtube in"
                                                              : "drawtube out"),
              "Refocus after each change, or put rings on the barrels that make them parfocal.",
              farthest->choice.eyepiece);
}

void common_findings(const FindingScope& scope) {
    const ReachTable& table = scope.report.reach;
    if (table.entries.size() < 2 || table.usable() < table.entries.size() || table.conflict) return;
    if (table.by_primary) {
        scope.add(Severity::good, "one_position_serves_all",
                  fmt::format("One setting of the main mirror serves all {} combinations with the "
                              "eyepiece seats alone.",
                              table.entries.size()));
        return;
    }
    scope.add(Severity::good, "one_position_serves_all",
              fmt::format("One drawtube position serves all {} combinations with the eyepiece "
                          "seats alone: {:.1f} to {:.1f} mm out.",
                          table.entries.size(), table.common.low.value, table.common.high.value));
}

}  // namespace

void reach_table_findings(const FindingScope& scope) {
    others_findings(scope);
    refocus_findings(scope);
    common_findings(scope);
}

}  // namespace beamfork
