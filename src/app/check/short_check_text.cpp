#include <algorithm>

#include "app/check/check.hpp"
#include "app/check/check_sections.hpp"
#include "app/check/told_findings.hpp"
#include "app/page/page_text.hpp"
#include "base/letters.hpp"
#include "scene/findings/finding_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::size_t most_findings = 3;

// What is right is no finding to act on; the budget tells whether it reaches focus.
std::string most_important(const Report& report) {
    const auto& all = report.findings;
    const auto amiss = static_cast<std::size_t>(std::ranges::count_if(
        all, [](const Finding& one) { return one.severity != Severity::good; }));
    const std::size_t told_now = std::min(most_findings, amiss);
    std::string out = fmt::format("VERDICT: {}", finding_summary(report));
    out += told_now < all.size()
               ? fmt::format(" ({} of {} findings; all with --full)\n", told_now, all.size())
               : "\n";
    ToldCures told;
    for (std::size_t i = 0; i < told_now; ++i)
        out += short_finding_text(all[i], told);
    return out;
}

std::string line_of_each(const Setup& setup, const Report& report) {
    constexpr std::size_t name_width = 17;
    std::string out = "STUDIES (each in full with --study NAME)\n";
    for (const CheckSection& section : check_sections()) {
        if (!section.line) continue;
        const std::string line = section.line(setup, report);
        if (line.empty()) continue;
        out += "  " + in_column(std::string(section.study), name_width - 2)
               + in_column(line, std::min(letter_count(line), page_width() - name_width)) + '\n';
    }
    return out;
}

}  // namespace

std::string short_check_text(const CheckedSetup& checked) {
    const Report& report = checked.combinations.at(checked.chosen).report;
    std::string out = checked.setup.title + "\n\n" + most_important(report);
    out += '\n' + focus_budget_text(checked.setup, report);
    out += '\n' + magnification_text(checked.setup, report);
    return out + '\n' + line_of_each(checked.setup, report);
}

}  // namespace beamfork
