#include <cmath>

#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

void other_uses_findings(const FindingScope& scope) {
    for (const OtherUse& use : scope.report.other_uses) {
        if (use.use != Use::one_eye) continue;
        if (use.reaches && scope.report.budget.reaches) {
            scope.add(Severity::good, "one_eye_reaches",
                      fmt::format("From two eyes to one without rebuilding: one eyepiece in place "
                                  "of the head focuses {:.1f} mm farther {}.",
                                  abs(use.change).value,
                                  use.change < Millimetres{} ? "in" : "out"));
        } else if (!use.reaches) {
            scope.add(Severity::note, "one_eye_out_of_reach",
                      fmt::format("One eyepiece in place of the head does not reach focus: {:.1f} "
                                  "mm too far {}.",
                                  use.shortfall.value, use.shortfall_is_inward ? "in" : "out"),
                      use.shortfall_is_inward
                          ? fmt::format("Save {:.1f} mm of light path.", use.shortfall.value)
                          : fmt::format("Keep a spacer of {:.0f} mm or more for one eye.",
                                        std::ceil(use.shortfall.value)),
                      use.removed.back());
        }
    }
}

}  // namespace beamfork
