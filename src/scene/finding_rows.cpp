#include "scene/finding_rows.hpp"

#include <algorithm>
#include <array>

#include "study/cure_search.hpp"

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

CureRow cure_row_of(const Cure& cure) {
    CureRow row{cure.what, cure.removes ? "mends it" : "makes it less", cure.cost};
    row.effect += ", " + to_words(cure.reversibility);
    if (!cure.effect.empty()) row.effect += ": " + cure.effect;
    return row;
}

std::string no_cure_words(const Report& report, const Finding& finding) {
    if (finding.severity > Severity::poor || !finding.cures.empty()) return "";
    return report.cures_are_sought ? "No single change was found that mends this."
                                   : "Looking for what mends this …";
}

}  // namespace

std::vector<FindingRow> finding_rows(const Report& report) {
    std::vector<FindingRow> rows;
    for (const Finding& finding : report.findings) {
        const SeverityLook look = look_of(finding.severity);
        FindingRow row{finding.severity, look.word,      look.sign,   look.role,
                       finding.sentence, finding.advice, finding.part};
        for (const Cure& cure : finding.cures)
            row.cures.push_back(cure_row_of(cure));
        row.no_cure = no_cure_words(report, finding);
        rows.push_back(std::move(row));
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
