#include "scene/comparison/comparison_rows.hpp"

#include "base/chance.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string printed_number(const ComparedResult& result, double value) {
    return result.key == "focus_chance" ? short_chance(value / 100)
                                        : format_number(value, result.decimals);
}

std::string printed_result(const ComparedResult& result, double value) {
    const auto unit = symbol(result.unit);
    const bool is_close = result.unit == FieldUnit::times || result.unit == FieldUnit::degree
                          || result.unit == FieldUnit::arcminute;
    return printed_number(result, value) + (unit.empty() || is_close ? "" : " ")
           + std::string(unit);
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

}  // namespace

ComparisonRows comparison_rows(const Setup& here,
                               const Report& report_here,
                               const Setup& there,
                               const Report& report_there) {
    ComparisonRows rows;
    for (const ComparedResult& result : compare_reports(report_here, report_there)) {
        auto& list = result.differs ? rows.changed : rows.same;
        list.push_back({std::string(result.label), printed_result(result, result.here),
                        printed_result(result, result.there), result.better,
                        std::string(result.help)});
    }
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
