#include <cctype>
#include <cmath>

#include "base/text.hpp"
#include "base/typed_number.hpp"
#include "study/findings/finding_scope.hpp"
#include "study/focus/stated_pair.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr double factor_off = 0.05;         // of the stated factor
constexpr double path_difference_mm = 0.5;  // a datasheet is rounded to whole mm

void factor_findings(const FindingScope& scope) {
    for (const ShifterAtWork& shifter : scope.report.budget.shifters) {
        const auto pair = stated_pair_at_work(scope.setup, scope.report.budget, shifter.part);
        if (!pair || std::abs(pair->factor_there / pair->factor - 1) <= factor_off) continue;
        scope.add(Severity::note, "factor_differs",
                  fmt::format("{}: the stated {}.", scope.name(shifter.part), to_words(*pair)),
                  fmt::format("{} All numbers here are computed from the real one.",
                              stated_pair_is_physics),
                  shifter.part);
    }
}

// Stated lengths and glass from which more light path follows than is stated: "entry leg 22 mm, glass N-BAK4".
std::string stated_values(const Part& part) {
    std::vector<std::string> values;
    for (const FieldInfo& field : kind_of(part.body).fields) {
        if (!is_ruled(part.body, field) || !is_relevant(part.body, field)) continue;
        const auto value = field_value(part.body, field.key);
        std::string label = field.label;
        label.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(label.front())));
        if (const auto* number = std::get_if<double>(&*value))
            values.push_back(label + " " + with_symbol(format_exact(*number), field.unit));
        if (const auto* word = std::get_if<std::string>(&*value))
            values.push_back(label + " " + *word);
    }
    return fmt::format("{}", fmt::join(values, ", "));
}

void path_findings(const FindingScope& scope) {
    for (const LightPath& path : scope.report.train.light_paths) {
        if (!path.stated) continue;
        const double extra = *path.stated - path.derived_as_stated();
        if (std::abs(extra) < path_difference_mm) continue;
        const Part& part = scope.setup.parts[path.part];
        if (path.end_air + extra >= 0) {
            scope.add(Severity::note, "stated_path_differs",
                      fmt::format(
                          "{}: stated light path {:.1f} mm, derived from glass and air {:.1f} mm; "
                          "the difference of {} mm is an air space at its end.",
                          part.name, *path.stated, path.derived_as_stated(),
                          format_signed(extra, 1)),
                      "", path.part);
        } else {
            scope.add(Severity::poor, "stated_path_contradicts",
                      fmt::format("{}: a light path of {:.1f} mm contradicts {}: with no air to "
                                  "spare these take {:.1f} mm.",
                                  part.name, *path.stated, stated_values(part),
                                  path.derived_as_stated() - path.end_air),
                      "One of these numbers is not so: check them against the leaflet, or measure.",
                      path.part);
        }
    }
}

}  // namespace

void part_findings(const FindingScope& scope) {
    factor_findings(scope);
    path_findings(scope);
}

}  // namespace beamfork
