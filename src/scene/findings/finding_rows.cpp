#include "scene/findings/finding_rows.hpp"

#include <algorithm>
#include <array>

#include "study/cures/cure_effect.hpp"
#include "study/findings/report.hpp"

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
    return {cure.what,
            (cure.removes ? "mends it, " : "makes it less, ") + to_words(cure.reversibility),
            cure.effect, cure.cost};
}

std::string no_cure_words(const Report& report, const Finding& finding) {
    if (finding.severity > Severity::poor || !finding.cures.empty()) return "";
    return report.cures_are_sought ? "No single change was found that mends this."
                                   : "Looking for what mends this …";
}

// Advice may begin with the order that the best cure's card gives too: once is enough.
std::string advice_beside(const std::string& advice, const std::vector<Cure>& cures) {
    const bool is_told = !cures.empty() && advice.rfind(cures.front().what, 0) == 0;
    if (!is_told) return advice;
    const std::size_t stop = advice.find(". ");
    return stop == std::string::npos ? "" : advice.substr(stop + 2);
}

}  // namespace

std::string CureRow::text() const {
    const std::string gains = effect_text(effect, true);
    const std::string losses = effect_text(effect, false);
    return verdict + (gains.empty() ? "" : ": " + gains) + "."
           + (losses.empty() ? "" : " Costs: " + losses + ".") + (cost.empty() ? "" : " " + cost);
}

Headline headline_of(const FindingRow& row) {
    const std::string whole = row.word + ": " + row.sentence;
    if (row.severity > Severity::poor) return {whole, ""};
    constexpr std::size_t shortest = 12;  // "Splitter head:" alone tells nothing
    const std::size_t from = row.word.size() + 2 + shortest;
    const std::size_t stop =
        std::min({whole.find(": ", from), whole.find("; ", from), whole.find(". ", from)});
    if (stop == std::string::npos) return {whole, ""};
    const std::string mark = whole[stop] == '.' ? "." : "";
    std::string rest = whole.substr(stop + 2);
    if (!rest.empty() && rest.front() >= 'a' && rest.front() <= 'z')
        rest.front() = static_cast<char>(rest.front() - 32);
    return {whole.substr(0, stop) + mark, rest};
}

const Setup& cured_setup(const Report& report, std::size_t row, std::size_t cure) {
    return report.findings.at(row).cures.at(cure).setup;
}

std::vector<FindingRow> finding_rows(const Report& report) {
    std::vector<FindingRow> rows;
    for (const Finding& finding : report.findings) {
        const SeverityLook look = look_of(finding.severity);
        FindingRow row{finding.severity, look.word,
                       look.sign,        look.role,
                       finding.sentence, advice_beside(finding.advice, finding.cures),
                       finding.part};
        for (const Cure& cure : finding.cures)
            row.cures.push_back(cure_row_of(cure));
        row.no_cure = no_cure_words(report, finding);
        row.is_that_focus_is_reached = finding.id == "focus_reached";
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
