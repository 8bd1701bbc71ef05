#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "scene/tune/tune_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::size_t most_told = 10;

std::vector<Sensitivity> of_margin(const Setup& setup, const Report& report) {
    return sensitivities(setup, report.train.choice, Watched::margin);
}

}  // namespace

Json tune_json(const Setup& setup, const Report& report) {
    Json list = Json::array();
    for (const Sensitivity& one : of_margin(setup, report)) {
        list.push_back({{"part", setup.parts[one.tunable.varied.part].name},
                        {"key", one.tunable.varied.key},
                        {"unit", symbol(one.tunable.field.unit)},
                        {"step", one.step()},
                        {"margin_change_mm", one.per_step()}});
    }
    return list;
}

std::string tune_line(const Setup& setup, const Report& report) {
    const auto all = of_margin(setup, report);
    if (all.empty()) return "";
    const TuneChangeRow row = tune_change_row(setup, all.front(), info_of(Watched::margin));
    return fmt::format("{} of {} changes the focus margin by {}", row.per, row.label, row.value);
}

std::string tune_text(const Setup& setup, const Report& report) {
    const auto all = of_margin(setup, report);
    if (all.empty()) return "";
    std::string out = "WHAT A STEP MORE OF EACH NUMBER CHANGES IN THE FOCUS MARGIN\n";
    for (std::size_t i = 0; i < std::min(most_told, all.size()); ++i) {
        const TuneChangeRow row = tune_change_row(setup, all[i], info_of(Watched::margin));
        out += fmt::format("  {} {}  {}\n", in_column(row.value, 12, true),
                           in_column(row.per, 8, true), row.label);
    }
    if (all.size() > most_told)
        out += fmt::format("  and {} more, of less effect\n", all.size() - most_told);
    return out;
}

}  // namespace beamfork
