#include "scene/finding_rows.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace beamfork {

namespace {

struct SeverityLook {
    const char* word;
    FindingSign sign;
    ColourRole role;
};

SeverityLook look_of(Severity severity) {
    switch (severity) {
    case Severity::fails: return {"Fails", FindingSign::cross, ColourRole::clipped};
    case Severity::poor: return {"Poor", FindingSign::triangle, ColourRole::shortfall};
    case Severity::note: return {"Note", FindingSign::dot, ColourRole::dimension};
    case Severity::good: return {"Good", FindingSign::tick, ColourRole::good};
    }
    return {"", FindingSign::dot, ColourRole::dimension};
}

}  // namespace

std::vector<FindingRow> finding_rows(const Report& report) {
    std::vector<FindingRow> rows;
    for (const Finding& finding : report.findings) {
        const SeverityLook look = look_of(finding.severity);
        rows.push_back({finding.severity, look.word, look.sign, look.role, finding.sentence,
                        finding.advice, finding.part});
    }
    return rows;
}

std::string finding_summary(const Report& report) {
    const auto count = [&](Severity severity) {
        return std::count_if(report.findings.begin(), report.findings.end(),
                             [&](const Finding& finding) { return finding.severity == severity; });
    };
    const auto fails = count(Severity::fails);
    const auto poor = count(Severity::poor);
    if (fails > 0 && poor > 0)
        return fmt::format("{} {}, {} poor", fails, fails == 1 ? "fails" : "fail", poor);
    if (fails > 0) return fmt::format("{} {}", fails, fails == 1 ? "fails" : "fail");
    if (poor > 0) return fmt::format("{} poor", poor);
    return "All is well";
}

}  // namespace beamfork
