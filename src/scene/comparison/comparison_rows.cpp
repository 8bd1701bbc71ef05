#include "scene/comparison/comparison_rows.hpp"

#include <cmath>

#include "study/comparison/comparison.hpp"
#include "study/comparison/part_differences.hpp"
#include "study/findings/report.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// What it is, and which of the two is better.
std::string help_of(const ResultInfo& result) {
    const std::string_view better = better_in_words(result);
    return std::string(result.help) + (better.empty() ? "" : " ") + std::string(better);
}

std::string times(int count, const char* one, const char* many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string summary_of(const ComparisonRows& rows) {
    if (rows.changed.empty()) return "All results are alike.";
    if (rows.better_here == 0 && rows.better_there == 0)
        return "Neither is better: what differs is a matter of taste.";
    return fmt::format("This setup is better in {}, the other in {}.",
                       times(rows.better_here, "result", "results"), rows.better_there);
}

DifferenceRow row_of(const Setup& here, const Setup& there, const PartDifference& difference) {
    const std::string name =
        difference.here ? here.parts[*difference.here].name : there.parts[*difference.there].name;
    const auto or_dash = [](const std::string& text) { return text.empty() ? "–" : text; };
    if (difference.field) {
        return {difference.here, name + ": " + difference.field->label, difference.value_here,
                difference.value_there};
    }
    const bool is_one_sided = !difference.here || !difference.there;
    if (is_one_sided)
        return {difference.here, name, difference.here ? "has it" : "–",
                difference.there ? "has it" : "–"};
    return {difference.here, kind_of(here.parts[*difference.here].body).label,
            or_dash(difference.value_here), or_dash(difference.value_there)};
}

// What is extended, sky and nebulae alike: neither is better for it.
void add_extended_light(ComparisonRows& rows, const Report& here, const Report& there) {
    constexpr double notable = 0.02;  // magnitudes: nobody sees less
    const auto light = extended_light(here, there);
    if (!light) return;
    const double lost = light->dimmer_there;
    const auto told = [](double share, double dimmer) {
        return fmt::format("{:.1f} %", 100 * share)
               + (dimmer >= notable ? fmt::format(", {:.2f} mag dimmer", dimmer) : "");
    };
    auto& list = std::abs(lost) < notable ? rows.same : rows.changed;
    list.push_back({"Sky and nebulae", told(light->here, -lost), told(light->there, lost),
                    std::nullopt,
                    "Brightness of what is extended, in one eye, against the naked eye: the "
                    "square of the exit pupil over the eye's, times what the train lets through; "
                    "2.5 log10 of the ratio in magnitudes."});
}

}  // namespace

ComparisonRows comparison_rows(const Setup& here,
                               const Report& report_here,
                               const Setup& there,
                               const Report& report_there) {
    ComparisonRows rows;
    for (const ComparedResult& result : compare_reports(report_here, report_there)) {
        auto& list = result.differs ? rows.changed : rows.same;
        const ResultInfo& info = *result.info;
        list.push_back({std::string(info.label), info.text(result.here), info.text(result.there),
                        result.better, help_of(info)});
    }
    add_extended_light(rows, report_here, report_there);
    for (const PartDifference& difference : part_differences(here, there))
        rows.parts.push_back(row_of(here, there, difference));
    for (const ComparisonRow& row : rows.changed) {
        if (row.better == Side::here) ++rows.better_here;
        if (row.better == Side::there) ++rows.better_there;
    }
    rows.summary = summary_of(rows);
    return rows;
}

}  // namespace beamfork
