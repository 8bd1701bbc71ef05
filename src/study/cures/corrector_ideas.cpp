// Ideas for where a coma corrector stands.
#include <cmath>

#include "parts/coma_corrector.hpp"
#include "parts/spacer.hpp"
#include "study/cures/cure_ideas.hpp"
#include "study/image/coma_correction.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

void add_spacer_behind(CureIdeas& ideas, const ComaCorrection& one) {
    const double length = std::round(10 * (one.wanted - one.spacing).value) / 10;
    Spacer spacer;
    spacer.length = Millimetres{length};
    ideas.add({fmt::format("Put a spacer of {:.1f} mm behind “{}”", length, ideas.name(one.part)),
               "", Reversibility::exchange,
               with_part(ideas.setup, one.part + 1, {"Spacer behind the corrector", spacer, {}})});
}

// Every spacer between the corrector and the eyepieces that is long enough, or that is worth leaving out.
void add_shorter_spacers(CureIdeas& ideas, const ComaCorrection& one) {
    const double excess = (one.spacing - one.wanted).value;
    for (std::size_t i = one.part + 1; i < ideas.setup.parts.size(); ++i) {
        const auto* spacer = ideas.setup.parts[i].body.as<Spacer>();
        if (spacer == nullptr) continue;
        const double left = std::round(10 * (spacer->length.value - excess)) / 10;
        if (left < 1) {
            ideas.add({fmt::format("Leave out “{}”", ideas.name(i)), "", Reversibility::exchange,
                       without_part(ideas.setup, i)});
            continue;
        }
        Spacer shorter = *spacer;
        shorter.length = Millimetres{left};
        ideas.add_changed(
            i, shorter, fmt::format("One of {:.1f} mm in place of “{}”", left, ideas.name(i)), "");
    }
}

void add_suited_corrector(CureIdeas& ideas, const ComaCorrection& one) {
    auto lens = part_as<ComaCorrector>(ideas.setup, one.part);
    lens.spacing = Millimetres{std::round(one.spacing.value)};
    ideas.add_changed(one.part, lens,
                      fmt::format("A corrector made for a spacing of {:.0f} mm in place of “{}”",
                                  lens.spacing.value, ideas.name(one.part)),
                      "Few are made for one that long.");
}

}  // namespace

void add_corrector_ideas(CureIdeas& ideas) {
    for (const ComaCorrection& one : ideas.report.coma_corrections) {
        if (one.beyond().value < 0) add_spacer_behind(ideas, one);
        if (one.beyond().value > 0) {
            add_shorter_spacers(ideas, one);
            add_suited_corrector(ideas, one);
        }
        if (ideas.has("corrector_without_coma"))
            ideas.add({fmt::format("Leave out “{}”", ideas.name(one.part)), "",
                       Reversibility::at_once, without_part(ideas.setup, one.part)});
    }
}

}  // namespace beamfork
