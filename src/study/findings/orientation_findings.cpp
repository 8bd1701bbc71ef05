#include <algorithm>

#include "parts/target.hpp"
#include "study/findings/finding_scope.hpp"
#include "study/two_eyes/orientation.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// A lens between the telescope's image and another one that it makes of it.
void relay_findings(const FindingScope& scope) {
    if (!scope.report.magnification.image_turned) return;
    const auto& lenses = scope.report.budget.shifters;
    const auto relay = std::find_if(lenses.begin(), lenses.end(),
                                    [](const ShifterAtWork& lens) { return lens.factor < 0; });
    scope.add(Severity::note, "image_relayed",
              fmt::format("{} makes a second image {:.1f} mm behind itself: it turns the image by "
                          "180°, in both eyes.",
                          scope.name(relay->part), relay->image_distance.value),
              "A weaker lens, or one nearer to the field stops than its focal length, does not.",
              relay->part);
}

}  // namespace

void orientation_findings(const FindingScope& scope) {
    relay_findings(scope);
    const auto& [left, right] = scope.report.orientation;
    const auto& target = part_as<Target>(scope.setup, scope.report.train.choice.target);
    if (left.is_mirrored != right.is_mirrored) {
        scope.add(Severity::fails, "parity_differs",
                  fmt::format("The left image is {}, the right one is {}: no two eyes can merge "
                              "them.",
                              to_words(left), to_words(right)),
                  "Both arms need the same kind of number of reflections, odd or even.",
                  scope.index_of(Role::splitter));
    } else if (target.distance && !is_erect(left)) {
        scope.add(Severity::note, "image_not_erect",
                  fmt::format("By day everything is seen {} in both eyes.", to_words(left)),
                  "An erecting diagonal shows it upright and the right way round.",
                  scope.report.train.choice.target);
    }
}

}  // namespace beamfork
