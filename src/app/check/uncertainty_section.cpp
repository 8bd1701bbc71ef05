#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "scene/focus/uncertainty_rows.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

Json uncertainty_json(const Setup& setup, const Report& report) {
    const Uncertainty& found = report.uncertainty;
    Json contributions = Json::array();
    for (const Contribution& one : found.contributions) {
        contributions.push_back({{"part", setup.parts[one.part].name},
                                 {"key", one.key},
                                 {"plus_minus", *one.tolerance.plus_minus},
                                 {"known_by", to_word(one.tolerance.known_by)},
                                 {"assumed", one.is_assumed},
                                 {"sensitivity", one.sensitivity},
                                 {"standard_mm", one.standard.value},
                                 {"share", one.share}});
    }
    Json json{{"margin_mm", found.margin.value},
              {"plus_minus_mm", found.standard.value},
              {"probability", found.probability},
              {"assumed", found.assumed},
              {"contributions", std::move(contributions)}};
    if (found.better)
        json["better"] = {{"plus_minus", found.better->plus_minus},
                          {"probability", found.better->probability}};
    return json;
}

std::string uncertainty_line(const Setup& setup, const Report& report) {
    const UncertaintyRows rows = uncertainty_rows(setup, report);
    if (!rows.is_stated || rows.contributions.empty()) return rows.headline;
    return fmt::format("{}; most depends on {}", rows.headline, rows.contributions.front().label);
}

std::string uncertainty_text(const Setup& setup, const Report& report) {
    const UncertaintyRows rows = uncertainty_rows(setup, report);
    std::string out = "HOW SURE FOCUS IS\n";
    if (!rows.is_stated) return out + wrapped("  ", rows.sentence, 2);
    out += wrapped("  ", rows.headline + ". " + rows.sentence, 2);
    constexpr int samples = 2000;
    if (const auto sampled = sampled_probability(setup, report.train.choice, samples))
        out += wrapped("  ",
                       fmt::format("Second opinion, {} setups drawn at random: {:.1f} % reach "
                                   "focus; folded from the ± {:.1f} %.",
                                   samples, 100 * *sampled, 100 * report.uncertainty.probability),
                       2);
    for (const ContributionRow& row : rows.contributions)
        out += fmt::format("  {:>12} %  {} ({})\n", row.percent, row.label, row.value);
    if (!rows.advice.empty()) out += wrapped("  ", rows.advice, 2);
    if (!rows.assumed.empty()) out += wrapped("  ", rows.assumed, 2);
    return out;
}

Json other_uses_json(const Setup& setup, const Report& report) {
    Json uses = Json::array();
    for (const OtherUse& use : report.other_uses) {
        Json removed = Json::array();
        for (const std::size_t part : use.removed)
            removed.push_back(setup.parts[part].name);
        uses.push_back({{"use", to_word(use.use)},
                        {"removed", std::move(removed)},
                        {"drawtube_mm", use.drawtube.value},
                        {"change_mm", use.change.value},
                        {"reaches", use.reaches},
                        {"shortfall_mm", use.shortfall.value}});
    }
    return uses;
}

std::string other_uses_text(const Setup& setup, const Report& report) {
    if (report.other_uses.empty()) return "";
    std::string out = "THE SAME PARTS, USED OTHERWISE\n";
    for (const ValueRow& row : other_uses_rows(setup, report))
        out += wrapped("  ", fmt::format("{}: {}. {}", row.label, row.value, row.help), 2);
    return out;
}

}  // namespace beamfork
