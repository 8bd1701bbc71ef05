#include "app/comparison/compare.hpp"

#include <algorithm>

#include "app/page/page_text.hpp"
#include "scene/comparison/comparison_rows.hpp"
#include "study/comparison/part_differences.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace beamfork {

namespace {

using CompareJson = nlohmann::ordered_json;

constexpr std::size_t label_width = 34;
constexpr std::size_t value_width = 22;

std::string
table_line(const std::string& label, const std::string& here, const std::string& there) {
    return "  " + in_column(label, label_width) + "  " + in_column(here, value_width, true) + "  "
           + in_column(there, value_width, true) + "\n";
}

std::string result_line(const ComparisonRow& row) {
    const auto marked = [&](const std::string& text, Side side) {
        return row.better == side ? "+ " + text : text;
    };
    return table_line(row.label, marked(row.here, Side::here), marked(row.there, Side::there));
}

CompareJson better_json(const std::optional<Side>& better) {
    if (!better) return nullptr;
    return *better == Side::here ? "first" : "second";
}

}  // namespace

std::string comparison_text(const ReportedSetup& here, const ReportedSetup& there) {
    const ComparisonRows rows = comparison_rows(here.setup, here.report, there.setup, there.report);
    std::string out =
        fmt::format("First:  {}\nSecond: {}\n\nRESULTS THAT DIFFER (+ the better one)\n",
                    here.setup.title, there.setup.title);
    if (!rows.changed.empty()) out += table_line("", "first", "second");
    for (const ComparisonRow& row : rows.changed)
        out += result_line(row);
    out += fmt::format("  Better: the first in {}, the second in {}.\n\nPARTS THAT DIFFER\n",
                       rows.better_here, rows.better_there);
    if (rows.parts.empty()) out += "  None.\n";
    for (const DifferenceRow& row : rows.parts)
        out += table_line(row.label, row.here, row.there);
    if (!rows.same.empty()) out += "\nALIKE IN BOTH\n";
    for (const ComparisonRow& row : rows.same)
        out += result_line(row);
    return out;
}

std::string comparison_json(const ReportedSetup& here, const ReportedSetup& there) {
    CompareJson results = CompareJson::array();
    for (const ComparedResult& one : compare_reports(here.report, there.report)) {
        results.push_back({{"key", one.info->key},
                           {"label", one.info->label},
                           {"unit", symbol(one.info->unit)},
                           {"first", one.here},
                           {"second", one.there},
                           {"differs", one.differs},
                           {"better", better_json(one.better)}});
    }
    CompareJson parts = CompareJson::array();
    const auto name_in = [](const Setup& setup, std::optional<std::size_t> part) {
        return part ? CompareJson(setup.parts[*part].name) : CompareJson();
    };
    for (const PartDifference& one : part_differences(here.setup, there.setup)) {
        parts.push_back({{"first_part", name_in(here.setup, one.here)},
                         {"second_part", name_in(there.setup, one.there)},
                         {"key", one.field ? CompareJson(one.field->key) : CompareJson()},
                         {"first", one.value_here},
                         {"second", one.value_there}});
    }
    CompareJson sky;
    if (const auto light = extended_light(here.report, there.report)) {
        sky = {{"first", light->here},
               {"second", light->there},
               {"dimmer_in_second_mag", light->dimmer_there}};
    }
    const CompareJson root{{"beamfork_compare", 1},       {"first", here.setup.title},
                           {"second", there.setup.title}, {"results", results},
                           {"sky_and_nebulae", sky},      {"parts", parts}};
    return root.dump(2) + "\n";
}

}  // namespace beamfork
