// What a study's findings are written into: the setup, its report, and the growing list. Each topic has a
// function `void <topic>_findings(const FindingScope&)` in a file of that name; findings.cpp lists them.
#pragma once

#include "study/findings/report.hpp"

namespace beamfork {

struct FindingScope {
    const Setup& setup;
    const Report& report;
    std::vector<Finding>& found;

    void add(Severity severity,
             std::string id,
             std::string sentence,
             std::string advice = "",
             std::optional<std::size_t> part = {}) const {
        found.push_back(
            {severity, std::move(id), std::move(sentence), std::move(advice), part, {}});
    }
    [[nodiscard]] const std::string& name(std::size_t part) const { return setup.parts[part].name; }
    /// The first part with that role, which the setup must have.
    [[nodiscard]] std::size_t index_of(Role role) const {
        return parts_with_role(setup, role).front();
    }
};

void focus_findings(const FindingScope& scope);
void telescope_findings(const FindingScope& scope);
void collision_findings(const FindingScope& scope);
void lens_findings(const FindingScope& scope);
void light_findings(const FindingScope& scope);
void brightness_findings(const FindingScope& scope);
void alignment_findings(const FindingScope& scope);
void sight_findings(const FindingScope& scope);
void part_findings(const FindingScope& scope);
void coma_correction_findings(const FindingScope& scope);
void image_quality_findings(const FindingScope& scope);
void reach_table_findings(const FindingScope& scope);
void joint_findings(const FindingScope& scope);
void fit_findings(const FindingScope& scope);
void pupil_distance_findings(const FindingScope& scope);
void uncertainty_findings(const FindingScope& scope);
void other_uses_findings(const FindingScope& scope);
void orientation_findings(const FindingScope& scope);
void choice_findings(const FindingScope& scope);

}  // namespace beamfork
