#include <cmath>

#include "app/check/check.hpp"
#include "app/check/check_sections.hpp"
#include "app/commands/page_text.hpp"
#include "base/text.hpp"
#include "study/cures/cure_effect.hpp"
#include "study/cures/cure_search.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string budget_text(const FocusBudget& budget) {
    std::string out = "FOCUS BUDGET (light path in mm, glass counted as air)\n";
    for (const BudgetRow& row : budget.rows) {
        const bool is_total = row.entry == BudgetEntry::left_over;
        out +=
            fmt::format("  {}{:>9}{:>9}\n", in_column(row.label, 58),
                        is_total ? "" : format_signed(row.change, 1), format_number(row.left, 1));
    }
    if (budget.seats_take_up != 0) {
        out += fmt::format("  Reached by the seats: {}, the {} at its end.\n", seats_words(budget),
                           budget.primary ? "main mirror" : "drawtube");
    } else if (budget.seats_lack > 0 && budget.shortfall == 0) {
        out += fmt::format("  Never sharp for both eyes: {}.\n", arms_words(budget));
    } else if (const auto& primary = budget.primary; primary && budget.reaches) {
        out += fmt::format(
            "  Main mirror {:.1f} mm {}{}: back focus {:.1f} mm, focal length {:.0f} mm ({:.1f} mm "
            "per mm "
            "of back focus).\n  It could take {:.1f} mm more light path, {:.1f} mm less.\n",
            std::abs(primary->moved), primary->moved < 0 ? "down" : "up",
            budget.drawtube_helps() ? fmt::format(", drawtube {:.1f} mm out", budget.drawtube) : "",
            primary->back_focus, primary->focal_length, primary->focal_length_per_mm,
            budget.margin_in, budget.margin_out);
    } else if (primary) {
        out += fmt::format("  Out of reach: {:.1f} mm of light path too {} for the main mirror.\n",
                           budget.shortfall, budget.shortfall_is_inward ? "much" : "little");
    } else if (budget.reaches) {
        out += fmt::format(
            "  Drawtube at {:.1f} of {:.1f} mm; {:.1f} mm left inward, {:.1f} mm outward.\n",
            budget.wanted_drawtube, budget.travel, budget.margin_in, budget.margin_out);
    } else {
        out += fmt::format("  Out of reach: {:.1f} mm farther {} than the drawtube goes.\n",
                           budget.shortfall, budget.shortfall_is_inward ? "in" : "out");
    }
    return out;
}

std::string seen_text(const Setup& setup, const Combination& now) {
    const auto told = [&](ResultId id) {
        const ResultInfo& result = info_of(id);
        return result.text(result.value(now.report));
    };
    const bool is_sharp = now.report.budget.reaches;
    std::string out =
        fmt::format("WHAT YOU GET{} ({} | {} | {})\n", is_sharp ? "" : " ONCE IN FOCUS",
                    setup.parts[now.choice.eyepiece].name, setup.parts[now.choice.observer].name,
                    setup.parts[now.choice.target].name);
    out += fmt::format("  Magnification {}, true field {}, exit pupil {}\n",
                       told(ResultId::magnification), told(ResultId::true_field),
                       told(ResultId::exit_pupil));
    out += fmt::format("  Effective focal length {}, {} at the field stops, shifter factor {}\n",
                       told(ResultId::effective_focal_length), told(ResultId::focal_ratio),
                       told(ResultId::shifter_factor));
    if (now.report.magnification.image_turned)
        out += "  The image is turned by 180° by the lens that relays it\n";
    return out;
}

std::string light_text(const Setup& setup, const Report& report) {
    std::string out = "LIGHT AT THE FIELD STOPS\n";
    for (const EyeClipping& eye : report.clipping) {
        out +=
            fmt::format("  {:<5} eye: fully lit {:.1f} of {:.1f} mm, edge {:.0f} %, working "
                        "aperture {:.0f} mm\n",
                        name_of(eye.eye), eye.fully_illuminated_diameter.value,
                        eye.field_stop.value, 100 * eye.edge_relative, eye.working_aperture.value);
        for (const EndShare& end : eye.rings.back().ends) {
            if (end.share < 0.005) continue;
            out += fmt::format("    edge loses {:>4.1f} % at {}\n", 100 * end.share,
                               end_name(setup, report.train.path(eye.eye), end));
        }
    }
    return out;
}

std::string cures_text(const Finding& finding) {
    if (finding.cures.empty())
        return finding.severity > Severity::poor
                   ? ""
                   : wrapped(std::string(9, ' '), "No single change was found that mends this.");
    std::string out;
    for (const Cure& cure : finding.cures) {
        const std::string gains = effect_text(cure.effect, true);
        const std::string losses = effect_text(cure.effect, false);
        out += wrapped(fmt::format("         {} ", cure.removes ? '+' : '~'),
                       fmt::format("{} ({}{}{}).{}{}{}", cure.what, to_words(cure.reversibility),
                                   gains.empty() ? "" : ": ", gains,
                                   losses.empty() ? "" : " Costs: " + losses + ".",
                                   cure.cost.empty() ? "" : " ", cure.cost));
    }
    return out;
}

}  // namespace

std::string check_text(const CheckedSetup& checked) {
    const Combination& now = checked.combinations.at(checked.chosen);
    std::string out =
        checked.setup.title + "\n\nFINDINGS (+ what would mend it, ~ what would make it less)\n";
    for (const Finding& finding : now.report.findings) {
        out += wrapped(fmt::format("  {:<7}", to_word(finding.severity)), finding.sentence);
        if (!finding.advice.empty()) out += wrapped(std::string(9, ' '), finding.advice);
        out += cures_text(finding);
    }
    out += '\n' + budget_text(now.report.budget);
    out += '\n' + seen_text(checked.setup, now);
    out += '\n' + light_text(checked.setup, now.report);
    for (const CheckSection& section : check_sections()) {
        if (!section.text) continue;
        const std::string text = section.text(checked.setup, now.report);
        if (!text.empty()) out += '\n' + text;
    }
    return out;
}

}  // namespace beamfork
