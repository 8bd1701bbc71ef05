#include <algorithm>

#include "app/check/check.hpp"
#include "app/check/check_sections.hpp"
#include "app/check/told_findings.hpp"

namespace beamfork {

std::string check_text(const CheckedSetup& checked) {
    const Report& report = checked.combinations.at(checked.chosen).report;
    std::string out =
        checked.setup.title + "\n\nFINDINGS (+ what would mend it, ~ what would make it less)\n";
    ToldCures told;
    for (const Finding& finding : report.findings)
        out += finding_text(finding, told);
    for (const CheckSection& section : check_sections()) {
        if (!section.text) continue;
        const std::string text = section.text(checked.setup, report);
        if (!text.empty()) out += '\n' + text;
    }
    return out;
}

std::string study_text(const CheckedSetup& checked, std::string_view study) {
    const Report& report = checked.combinations.at(checked.chosen).report;
    std::string out = checked.setup.title + '\n';
    for (const CheckSection& section : check_sections()) {
        if (section.study != study || !section.text) continue;
        const std::string text = section.text(checked.setup, report);
        if (!text.empty()) out += '\n' + text;
    }
    return out;
}

std::vector<std::string> told_studies() {
    std::vector<std::string> stems;
    for (const CheckSection& section : check_sections()) {
        if (!section.text || section.study.empty()) continue;
        if (std::ranges::find(stems, section.study) == stems.end())
            stems.emplace_back(section.study);
    }
    return stems;
}

}  // namespace beamfork
