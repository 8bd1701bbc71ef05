#include <cmath>

#include "parts/coma_corrector.hpp"
#include "parts/refractor.hpp"
#include "parts/spacer.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double coma_hardly_left = 0.8;  // of it taken: our own choice

// The longest spacer between the corrector and the eyepieces, if one can be taken out.
const Part* longest_spacer_behind(const FindingScope& scope, std::size_t corrector) {
    const Part* longest = nullptr;
    double length = 0;
    for (std::size_t i = corrector + 1; i < scope.setup.parts.size(); ++i) {
        const auto* spacer = scope.setup.parts[i].body.as<Spacer>();
        if (spacer == nullptr || spacer->length.value <= length) continue;
        length = spacer->length.value;
        longest = &scope.setup.parts[i];
    }
    return longest;
}

// How much farther in the drawtube goes for a spacer of that length behind the corrector, by the thin-lens equation.
double inward_for_spacer(const ComaCorrector& lens, const ComaCorrection& at_work, double spacer) {
    const double f = lens.lens_focal_length().value;
    const double d = (at_work.spacing + lens.lens_to_shoulder()).value;
    const auto object = [f](double image) { return image / (1 - image / f); };
    return (object(d + spacer) - object(d)) / (at_work.earlier_factor * at_work.earlier_factor);
}

std::string longer_advice(const FindingScope& scope, const ComaCorrection& one) {
    const double spacer = (one.wanted - one.spacing).value;
    const auto& lens = part_as<ComaCorrector>(scope.setup, one.part);
    const double inward = inward_for_spacer(lens, one, spacer);
    std::string advice = fmt::format("A spacer of {:.1f} mm behind it brings it to the window's "
                                     "middle; focus then wants {:.1f} mm more light path",
                                     spacer, inward);
    const double left = scope.report.budget.margin_in.value;
    return advice
           + (left < inward ? fmt::format(", where {:.1f} mm are left.", std::max(0.0, left))
                            : ".");
}

std::string shorter_advice(const FindingScope& scope, const ComaCorrection& one) {
    std::string advice = fmt::format(
        "No spacer cures that: what stands between it and the field stops must become {:.1f} mm "
        "shorter in light path to come into the window, {:.1f} mm for its middle",
        one.beyond().value, (one.spacing - one.wanted).value);
    if (const Part* spacer = longest_spacer_behind(scope, one.part)) {
        advice += fmt::format("; “{}” is {:.1f} mm of it", spacer->name,
                              spacer->body.get<Spacer>().length.value);
    }
    return advice
           + fmt::format(". Or take a corrector made for a spacing of {:.0f} mm.",
                         one.spacing.value);
}

void spacing_finding(const FindingScope& scope, const ComaCorrection& one) {
    const double beyond = one.beyond().value;
    const double taken = 100 * one.share();
    if (beyond == 0) {
        scope.add(Severity::good, "corrector_spacing",
                  fmt::format("{} stands {:.1f} mm from the image, within {:g} ± {:g} mm: it takes "
                              "the main mirror's coma away.",
                              scope.name(one.part), one.spacing.value, one.wanted.value,
                              one.window.value),
                  "", one.part);
        return;
    }
    const bool is_far = beyond > 0;
    scope.add(one.share() < coma_hardly_left ? Severity::poor : Severity::note, "corrector_spacing",
              fmt::format(
                  "{} stands {:.1f} mm from the image and wants {:.1f} to {:.1f} mm: {:.1f} mm too "
                  "{}. It takes {:.0f} % of the main mirror's coma away.",
                  scope.name(one.part), one.spacing.value, (one.wanted - one.window).value,
                  (one.wanted + one.window).value, std::abs(beyond), is_far ? "far" : "near",
                  taken),
              is_far ? shorter_advice(scope, one) : longer_advice(scope, one), one.part);
}

}  // namespace

void coma_correction_findings(const FindingScope& scope) {
    const bool has_no_coma = find_part<Refractor>(scope.setup) != nullptr;
    for (const ComaCorrection& one : scope.report.coma_corrections) {
        if (has_no_coma) {
            scope.add(Severity::poor, "corrector_without_coma",
                      fmt::format("{} takes away the coma of a Newtonian's mirror; this telescope "
                                  "has none, and stars at its field's edge get that much coma.",
                                  scope.name(one.part)),
                      "Leave it out behind this telescope.", one.part);
        } else {
            spacing_finding(scope, one);
        }
    }
}

}  // namespace beamfork
