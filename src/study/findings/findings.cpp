#include "study/findings/findings.hpp"

#include <algorithm>
#include <array>

#include "study/findings/finding_scope.hpp"

namespace beamfork {

std::string to_word(Severity severity) {
    switch (severity) {
    case Severity::fails: return "fails";
    case Severity::poor: return "poor";
    case Severity::note: return "note";
    case Severity::good: return "good";
    }
    return "";
}

std::vector<Finding> find_all(const Setup& setup, const Report& report) {
    static constexpr std::array topics{
        focus_findings,       telescope_findings,       collision_findings,
        lens_findings,        light_findings,           sight_findings,
        part_findings,        coma_correction_findings, image_quality_findings,
        reach_table_findings, joint_findings,           fit_findings,
        brightness_findings,  alignment_findings,       uncertainty_findings,
        other_uses_findings,  orientation_findings,     pupil_distance_findings,
        choice_findings,
    };
    std::vector<Finding> found;
    for (const auto topic : topics)
        topic({setup, report, found});
    std::stable_sort(found.begin(), found.end(),
                     [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    return found;
}

}  // namespace beamfork
