#include "parts/observer.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double smallest_exit_pupil_mm = 0.6;  // common practice, no source

}  // namespace

void sight_findings(const FindingScope& scope) {
    const Report& report = scope.report;
    const auto& observer = part_as<Observer>(scope.setup, report.train.choice.observer);
    const double exit_pupil = report.magnification.exit_pupil.value;
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
}

}  // namespace beamfork
