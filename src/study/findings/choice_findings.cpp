#include <algorithm>

#include "parts/target.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double alike = 1.1;  // our choice: nobody sees a tenth more or less

// Pairs that do the work of another one, for the chosen observer and target.
void alike_findings(const FindingScope& scope) {
    struct Pair {
        std::size_t part;
        double magnification;
    };
    std::vector<Pair> pairs;
    for (const std::size_t part : parts_with_role(scope.setup, Role::eyepiece)) {
        Choice choice = scope.report.train.choice;
        choice.eyepiece = part;
        const auto budget = solved_focus(scope.setup, choice);
        if (!budget) continue;
        pairs.push_back({part, magnification(scope.setup, choice, *budget).magnification});
    }
    std::sort(pairs.begin(), pairs.end(),
              [](const Pair& a, const Pair& b) { return a.magnification < b.magnification; });
    for (std::size_t i = 1; i < pairs.size(); ++i) {
        const Pair& weaker = pairs[i - 1];
        const Pair& stronger = pairs[i];
        if (weaker.magnification <= 0 || stronger.magnification > alike * weaker.magnification)
            continue;
        scope.add(Severity::note, "pairs_alike",
                  fmt::format("“{}” and “{}” magnify nearly alike: {:.1f} and {:.1f} times.",
                              scope.name(weaker.part), scope.name(stronger.part),
                              weaker.magnification, stronger.magnification),
                  "One of them is enough, unless they differ in field or eye relief; steps of 1.4 "
                  "times are usual.",
                  stronger.part);
    }
}

// A test by day on something near tells nothing of the sky, which focuses farther in.
void near_target_findings(const FindingScope& scope) {
    const Choice& choice = scope.report.train.choice;
    const auto& target = part_as<Target>(scope.setup, choice.target);
    if (!target.distance || !scope.report.budget.reaches) return;
    Setup sky = scope.setup;
    sky.parts[choice.target].body.get<Target>().distance.reset();
    const auto budget = solved_focus(sky, choice);
    if (!budget || budget->reaches) return;
    scope.add(
        Severity::poor, "sky_out_of_reach",
        fmt::format("{} at {:.0f} m comes to focus, but the sky does not: it is {:.1f} mm too "
                    "far {}.",
                    scope.name(choice.target), target.distance->value, budget->shortfall.value,
                    budget->shortfall_is_inward ? "in" : "out"),
        "A test by day on something near does not tell that the stars will be sharp: choose "
        "a target without a distance to see what mends it.",
        choice.target);
}

}  // namespace

void choice_findings(const FindingScope& scope) {
    alike_findings(scope);
    near_target_findings(scope);
}

}  // namespace beamfork
