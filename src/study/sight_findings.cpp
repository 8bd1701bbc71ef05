#include "study/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double smallest_exit_pupil_mm = 0.6;  // common practice, no source
constexpr double spectacles_need_mm = 15;       // common practice, no source: 15-20 mm

}  // namespace

void sight_findings(const FindingScope& scope) {
    const Report& report = scope.report;
    const auto& observer = part_as<Observer>(scope.setup, report.train.choice.observer);
    const auto& eyepiece = part_as<EyepiecePair>(scope.setup, report.train.choice.eyepiece);
    const double exit_pupil = report.magnification.exit_pupil;
    if (exit_pupil > observer.eye_pupil.value) {
        scope.add(
            Severity::note, "exit_pupil_wasted",
            fmt::format("The exit pupil of {:.1f} mm is wider than the eye's {:.1f} mm: only "
                        "{:.0f} mm of the "
                        "aperture reach the eye.",
                        exit_pupil, observer.eye_pupil.value,
                        2 * report.train.objective_radius * observer.eye_pupil.value / exit_pupil),
            "A shorter eyepiece uses the whole aperture.", report.train.choice.eyepiece);
    } else if (exit_pupil < smallest_exit_pupil_mm) {
        scope.add(
            Severity::note, "exit_pupil_tiny",
            fmt::format(
                "The exit pupil is only {:.2f} mm: the image is large but dim and floaters show.",
                exit_pupil),
            "A longer eyepiece or a weaker shifter gives a brighter image.",
            report.train.choice.eyepiece);
    }
    if (eyepiece.outer_diameter >= observer.pupil_distance) {
        scope.add(Severity::fails, "eyepieces_touch",
                  fmt::format("Two eyepieces of {:.0f} mm cannot stand {:.0f} mm apart.",
                              eyepiece.outer_diameter.value, observer.pupil_distance.value),
                  "Slimmer eyepieces are needed for this observer.", report.train.choice.eyepiece);
    }
    if (observer.spectacles == Spectacles::kept_on
        && eyepiece.eye_relief.value < spectacles_need_mm) {
        scope.add(Severity::note, "eye_relief_short",
                  fmt::format(
                      "With spectacles on, an eye relief of {:.0f} mm hides the edge of the field.",
                      eyepiece.eye_relief.value),
                  "15 to 20 mm is usually needed.", report.train.choice.eyepiece);
    }
}

}  // namespace beamfork
