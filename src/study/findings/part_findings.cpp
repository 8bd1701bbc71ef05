#include <cmath>

#include "base/text.hpp"
#include "parts/shifter.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double factor_off = 0.05;         // of the stated factor
constexpr double path_difference_mm = 0.5;  // a datasheet is rounded to whole mm

}  // namespace

void part_findings(const FindingScope& scope) {
    for (const ShifterAtWork& shifter : scope.report.budget.shifters) {
        const auto* lens = scope.setup.parts.at(shifter.part).body.as<Shifter>();
        if (lens == nullptr || lens->given != ShifterGiven::factor_and_gain) continue;
        if (std::abs(shifter.factor / lens->stated_factor - 1) <= factor_off) continue;
        scope.add(
            Severity::note, "factor_differs",
            fmt::format(
                "{} works at {:.2f}× here, not at the stated {:.2f}×, because its lens is {:.1f} "
                "mm from "
                "the field stop instead of {:.1f} mm.",
                scope.name(shifter.part), shifter.factor, lens->stated_factor,
                shifter.image_distance,
                lens_of_stated_pair(lens->stated_factor, lens->stated_gain).image_distance.value),
            "Gain and magnification above are computed from the real spacing.", shifter.part);
    }
    for (const LightPath& path : scope.report.train.light_paths) {
        if (!path.stated) continue;
        const double extra = *path.stated - path.derived_as_stated();
        if (std::abs(extra) < path_difference_mm) continue;
        const bool fits = path.end_air + extra >= 0;
        scope.add(fits ? Severity::note : Severity::poor, "stated_path_differs",
                  fmt::format("{}: stated light path {:.1f} mm, derived from glass and air {:.1f} "
                              "mm; the difference of "
                              "{} mm is {}.",
                              scope.name(path.part), *path.stated, path.derived_as_stated(),
                              format_signed(extra, 1),
                              fits ? "an air space at its end" : "more than the air it has"),
                  fits ? ""
                       : "Check its legs, prism width and glass against the stated light path.",
                  path.part);
    }
}

}  // namespace beamfork
