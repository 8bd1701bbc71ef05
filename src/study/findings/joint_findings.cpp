#include "study/findings/finding_scope.hpp"
#include "study/fit/joints.hpp"

#include <fmt/format.h>

namespace beamfork {

void joint_findings(const FindingScope& scope) {
    for (const Joint& joint : scope.report.fit.joints) {
        if (joint.fits()) continue;
        const std::string rear = to_word(joint.rear);
        const std::string front = to_word(joint.front);
        const char* jam = is_false_friend(joint.rear, joint.front)
                              ? " They start to screw together and jam: do not force them."
                              : "";
        scope.add(Severity::fails, "joint_does_not_fit",
                  fmt::format("{} ends in “{}”, {} begins with “{}”: these two do not join.{}",
                              scope.name(joint.before), rear, scope.name(joint.behind), front, jam),
                  fmt::format("Between them goes {}; it adds its own length to the light path.",
                              adapter_between(joint.rear, joint.front)),
                  joint.behind);
    }
}

}  // namespace beamfork
