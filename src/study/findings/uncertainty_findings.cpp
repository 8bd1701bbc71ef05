#include "base/chance.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double sure_enough = 0.95;  // the level of confidence usually stated (GUM, 6.2.2)

}  // namespace

void uncertainty_findings(const FindingScope& scope) {
    const Uncertainty& found = scope.report.uncertainty;
    if (found.contributions.empty()) return;
    const Contribution& largest = found.contributions.front();
    const std::string value = fmt::format("{} of {}", largest.label, scope.name(largest.part));
    const char* all =
        found.assumed == found.contributions.size() ? "With the usual ± assumed for every length"
        : found.assumed > 0 ? "All stated ± and the usual ones of other lengths considered"
                            : "All stated ± considered";
    std::string advice;
    constexpr double gain_that_counts = 0.005;
    if (found.better && found.better->probability > found.probability + gain_that_counts) {
        advice =
            fmt::format("Measure the {}: known to ±{:.2g} {} and unchanged, it makes that {} %. {}",
                        value, found.better->plus_minus, symbol(largest.unit),
                        format_chance(found.better->probability),
                        home_measurement(scope.setup.parts[largest.part].body, largest.key));
    }
    if (found.probability >= sure_enough) {
        scope.add(Severity::good, "reach_is_sure",
                  fmt::format("{}, focus is reached with a chance of {} %.", all,
                              format_chance(found.probability)));
        return;
    }
    // Where focus is missed as stated, the shortfall is the first thing to say; where the seats take it up, that they do.
    const FocusBudget& budget = scope.report.budget;
    const bool by_seats = budget.reaches && budget.seats_take_up != Millimetres{};
    scope.add(budget.reaches && !by_seats ? Severity::poor : Severity::note, "reach_is_unsure",
              fmt::format("The chance {} {} %: the margin of {:.1f} mm is "
                          "known to ±{:.1f} mm{}, most of it from the {}.",
                          by_seats ? "that the drawtube reaches focus without the seats is"
                                   : "of reaching focus is",
                          format_chance(found.probability), found.margin.value,
                          found.standard.value, found.assumed == 0 ? "" : ", in part assumed",
                          value),
              advice, largest.part);
}

}  // namespace beamfork
