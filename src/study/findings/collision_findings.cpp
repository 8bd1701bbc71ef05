#include <cmath>

#include "study/findings/finding_scope.hpp"
#include "study/fit/clearance.hpp"

#include <fmt/format.h>

namespace beamfork {

// A part that would have to stand inside another: the part that reaches forward is too long.
void collision_findings(const FindingScope& scope) {
    constexpr double touching = -0.01;
    for (const EyePath& path : scope.report.train.paths) {
        for (const Clearance& one : clearances(path)) {
            if (one.room > touching) continue;
            scope.add(
                Severity::fails, "parts_collide",
                fmt::format("{}: its {} would reach {:.1f} mm into the {} of {}.",
                            scope.name(one.part), one.what, -one.room, one.obstacle,
                            scope.name(one.other)),
                fmt::format("Shorten it, or put a spacer of {:.0f} mm or more between the two.",
                            std::ceil(-one.room)),
                one.part);
            return;
        }
    }
}

}  // namespace beamfork
