#include <set>
#include <string>

#include "scene/findings/finding_rows.hpp"
#include "study/findings/report.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

TEST_CASE(
    "each severity has its own word, shape and colour, and the order of the findings is kept") {
    Report report;
    for (const Severity severity :
         {Severity::fails, Severity::poor, Severity::note, Severity::good}) {
        report.findings.push_back({severity, "id", "A sentence.", "Advice.", 3});
    }
    const auto rows = finding_rows(report);
    REQUIRE(rows.size() == 4);
    std::set<std::string> words;
    std::set<FindingSign> signs;
    std::set<ColourRole> roles;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        words.insert(rows[i].word);
        signs.insert(rows[i].sign);
        roles.insert(rows[i].role);
        CHECK(rows[i].severity == report.findings[i].severity);
        CHECK(rows[i].sentence == "A sentence.");
        CHECK(rows[i].part == 3);
    }
    CHECK(words.size() == 4);
    CHECK(signs.size() == 4);
    CHECK(roles.size() == 4);
}

TEST_CASE("the summary counts what fails and what is poor") {
    Report report;
    CHECK(finding_summary(report) == "All is well");
    report.findings = {{Severity::note, "", "", "", {}}};
    CHECK(finding_summary(report) == "All is well");
    report.findings.push_back({Severity::poor, "", "", "", {}});
    CHECK(finding_summary(report) == "1 poor");
    report.findings.push_back({Severity::fails, "", "", "", {}});
    CHECK(finding_summary(report) == "1 fails, 1 poor");
    report.findings.push_back({Severity::fails, "", "", "", {}});
    CHECK(finding_summary(report) == "2 fail, 1 poor");
}
