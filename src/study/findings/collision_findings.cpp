#include <cmath>

#include "study/findings/finding_scope.hpp"
#include "study/findings/unstated_inside.hpp"
#include "study/fit/clearance.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// What is told of a part that would stand in another: of those that are certain, the first, and of those that hang on
// an unstated place of glass, the first.
struct Collisions {
    std::optional<Clearance> certain;
    std::optional<Clearance> possible;
};

Collisions collisions(const FindingScope& scope) {
    constexpr Millimetres touching{-0.01};
    Collisions found;
    for (const EyePath& path : scope.report.train.paths) {
        for (const Clearance& one : clearances(path)) {
            if (one.room > touching) continue;
            auto& told =
                hangs_on_unstated(scope.report.train, one) ? found.possible : found.certain;
            if (!told) told = one;
        }
    }
    return found;
}

}  // namespace

// A part that would have to stand inside another: the part that reaches forward is too long.
void collision_findings(const FindingScope& scope) {
    const auto [certain, possible] = collisions(scope);
    const auto words = [&](const Clearance& one) {
        return fmt::format("{}: its {} would reach {:.1f} mm into the {} of {}",
                           scope.name(one.part), one.what, -one.room.value, one.obstacle,
                           scope.name(one.other));
    };
    if (certain) {
        scope.add(Severity::fails, "parts_collide", words(*certain) + ".",
                  fmt::format("Shorten it, or put a spacer of {:.0f} mm or more between the two.",
                              std::ceil(-certain->room.value)),
                  certain->part);
    }
    if (possible) {
        scope.add(
            Severity::note, "parts_may_collide",
            fmt::format("{}, {}.", words(*possible), where_glass_is_taken(scope, possible->other)),
            measure_from_seat(), possible->part);
    }
}

}  // namespace beamfork
