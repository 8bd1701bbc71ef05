#include <algorithm>
#include <cmath>

#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string rows_text(const FocusBudget& budget) {
    constexpr std::size_t two_numbers = 20;
    const std::size_t label_width = std::min<std::size_t>(58, page_width() - two_numbers);
    std::string out;
    for (const BudgetRow& row : budget.rows) {
        const bool is_total = row.entry == BudgetEntry::left_over;
        out += fmt::format("  {}{:>9}{:>9}\n", in_column(row.label, label_width),
                           is_total ? "" : format_signed(row.change.value, 1),
                           format_number(row.left.value, 1));
    }
    return out;
}

std::string end_text(const FocusBudget& budget) {
    std::string out;
    if (budget.seats_take_up != Millimetres{}) {
        out += fmt::format("  Reached by the seats: {}, the {} at its end.\n", seats_words(budget),
                           budget.primary ? "main mirror" : "drawtube");
    } else if (budget.seats_lack > Millimetres{} && budget.shortfall == Millimetres{}) {
        out += fmt::format("  Never sharp for both eyes: {}.\n", arms_words(budget));
    } else if (const auto& primary = budget.primary; primary && budget.reaches) {
        out += fmt::format(
            "  Main mirror {:.1f} mm {}{}: back focus {:.1f} mm, focal length {:.0f} mm ({:.1f} mm "
            "per mm "
            "of back focus).\n  It could take {:.1f} mm more light path, {:.1f} mm less.\n",
            abs(primary->moved).value, primary->moved < Millimetres{} ? "down" : "up",
            budget.drawtube_helps() ? fmt::format(", drawtube {:.1f} mm out", budget.drawtube.value)
                                    : "",
            primary->back_focus.value, primary->focal_length.value, primary->focal_length_per_mm,
            budget.margin_in.value, budget.margin_out.value);
    } else if (primary) {
        out += fmt::format("  Out of reach: {:.1f} mm of light path too {} for the main mirror.\n",
                           budget.shortfall.value, budget.shortfall_is_inward ? "much" : "little");
    } else if (budget.reaches) {
        out += fmt::format(
            "  Drawtube at {:.1f} of {:.1f} mm; {:.1f} mm left inward, {:.1f} mm outward.\n",
            budget.wanted_drawtube.value, budget.travel.value, budget.margin_in.value,
            budget.margin_out.value);
    } else {
        out += fmt::format("  Out of reach: {:.1f} mm farther {} than the drawtube goes.\n",
                           budget.shortfall.value, budget.shortfall_is_inward ? "in" : "out");
    }
    return out;
}

}  // namespace

std::string focus_budget_text(const Setup& /*setup*/, const Report& report) {
    return "FOCUS BUDGET (light path in mm, glass counted as air)\n" + rows_text(report.budget)
           + end_text(report.budget);
}

}  // namespace beamfork
