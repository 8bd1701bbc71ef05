#include "scene/focus/focus_budget_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

ColourRole role_of_entry(const BudgetRow& row) {
    switch (row.entry) {
    case BudgetEntry::available: return ColourRole::undivided_beam;
    case BudgetEntry::gives_back: return ColourRole::good;
    case BudgetEntry::left_over:
        return row.left < Millimetres{} ? ColourRole::shortfall : ColourRole::good;
    case BudgetEntry::spends:
    case BudgetEntry::observer: return ColourRole::dimension;
    }
    return ColourRole::dimension;
}

const char* help_of_entry(BudgetEntry entry) {
    switch (entry) {
    case BudgetEntry::available:
        return "Light path that can be spent, mm: from the drawtube's rear face, racked in, to the "
               "image.";
    case BudgetEntry::spends:
        return "Light path that it takes, mm: air counts in full, glass of length t and index n as "
               "t / n (reduced thickness: W. J. Smith, Modern Optical Engineering).";
    case BudgetEntry::gives_back:
        return "Light path that it gives back, mm: a lens moves the image outward by more than its "
               "mount is long.";
    case BudgetEntry::observer:
        return "Where this eye wants the image, mm: dioptres D move it by D f² / 1000 for an "
               "eyepiece of focal length f (Newton's equation).";
    case BudgetEntry::left_over:
        return "What is left, mm: offered less taken plus given back. So far the drawtube is "
               "racked out in focus; below zero, the seats must take it up or focus is not "
               "reached.";
    }
    return "";
}

BudgetBar bar_of(const BudgetRow& row) {
    BudgetBar bar{row.entry,
                  role_of_entry(row),
                  row.label,
                  {},
                  (row.left - row.change).value,
                  row.left.value,
                  row.part,
                  row.label + ".\n" + help_of_entry(row.entry)};
    const bool is_total =
        row.entry == BudgetEntry::available || row.entry == BudgetEntry::left_over;
    if (is_total) bar.from = 0;
    bar.value = row.entry == BudgetEntry::available   ? format_number(row.left.value, 1)
                : row.entry == BudgetEntry::left_over ? format_number(abs(row.left).value, 1)
                                                      : format_signed(row.change.value, 1);
    return bar;
}

std::string margin_text(Millimetres margin, const char* way) {
    return margin >= Millimetres{} ? fmt::format("{:.1f} mm {}", margin.value, way)
                                   : fmt::format("{:.1f} mm too far {}", -margin.value, way);
}

std::string travel_text(Millimetres margin, const char* way) {
    return margin >= Millimetres{} ? fmt::format("{:.1f} mm left {}ward", margin.value, way)
                                   : margin_text(margin, way);
}

// Where the seats decide, whatever focuses: nothing where they do not.
std::string seats_sentence(const FocusBudget& budget) {
    if (budget.seats_take_up != Millimetres{}) {
        return fmt::format("In focus by the seats, {}: the {} is at its end.", seats_words(budget),
                           budget.primary ? "main mirror" : "drawtube");
    }
    if (budget.seats_lack > Millimetres{} && budget.shortfall == Millimetres{})
        return "Never sharp for both eyes: " + arms_words(budget) + ".";
    return "";
}

std::string primary_sentence(const FocusBudget& budget) {
    const PrimaryFocus& primary = *budget.primary;
    if (!budget.reaches) {
        return fmt::format("Focus lies {:.1f} mm of light path farther {} than the main mirror "
                           "can bring it.",
                           budget.shortfall.value, budget.shortfall_is_inward ? "out" : "in");
    }
    return fmt::format(
        "In focus with the main mirror {:.1f} mm {}{}; back focus {:.0f} mm, focal length {:.0f} "
        "mm.",
        abs(primary.moved).value, primary.moved < Millimetres{} ? "down" : "up",
        budget.drawtube_helps()
            ? fmt::format(" and the drawtube {:.1f} mm out", budget.drawtube.value)
            : "",
        primary.back_focus.value, primary.focal_length.value);
}

std::string travel_sentence(const FocusBudget& budget) {
    if (!budget.reaches) {
        return fmt::format("Focus lies {:.1f} mm farther {} than the drawtube goes.",
                           budget.shortfall.value, budget.shortfall_is_inward ? "in" : "out");
    }
    if (budget.is_held && abs(budget.drawtube - budget.wanted_drawtube) > Millimetres{0.05}) {
        return fmt::format("The drawtube is held {:.1f} mm out; focus is at {:.1f} mm.",
                           budget.drawtube.value, budget.wanted_drawtube.value);
    }
    return fmt::format("In focus with the drawtube {:.1f} mm out of {:.0f} mm.",
                       budget.drawtube.value, budget.travel.value);
}

// Present and wanted place from fully up to fully down, and the words for what is left either way.
void show_primary(TravelScale& scale, const FocusBudget& budget) {
    const PrimaryFocus& primary = *budget.primary;
    scale.travel = (primary.travel_up + primary.travel_down).value;
    scale.present = (primary.travel_up - primary.moved).value;
    // What the drawtube makes up, the mirror is not asked for.
    const Millimetres asked = budget.drawtube_helps() ? primary.moved : primary.wanted;
    scale.wanted = (primary.travel_up - asked).value;
    scale.margin_in = margin_text(budget.margin_in, "more light path");
    scale.margin_out = margin_text(budget.margin_out, "less");
    scale.sentence = primary_sentence(budget);
    scale.help = fmt::format(
        "The main mirror's travel from fully up (left) to fully down; the bar is where it stands, "
        "the diamond where focus wants it. Each mm of back focus is worth {:.1f} mm of focal "
        "length: main mirror's focal length over the secondary's (two-mirror formula, W. J. Smith, "
        "Modern Optical Engineering).",
        primary.focal_length_per_mm);
}

void show_drawtube(TravelScale& scale, const FocusBudget& budget) {
    scale.travel = budget.travel.value;
    scale.present = budget.drawtube.value;
    scale.wanted = budget.wanted_drawtube.value;
    scale.margin_in = travel_text(budget.margin_in, "in");
    scale.margin_out = travel_text(budget.margin_out, "out");
    scale.sentence = travel_sentence(budget);
    scale.help = "The drawtube's travel from racked in (left) to racked out. The bar is where it "
                 "stands, the diamond where focus wants it.";
}

TravelScale travel_scale(const FocusBudget& budget) {
    TravelScale scale;
    budget.primary ? show_primary(scale, budget) : show_drawtube(scale, budget);
    if (auto words = seats_sentence(budget); !words.empty()) scale.sentence = std::move(words);
    const double low = std::min(0.0, scale.wanted);
    const double high = std::max(scale.travel, scale.wanted);
    const double room = std::max(0.04 * (high - low), 0.1);  // an axis has a length
    scale.low = low - room;
    scale.high = high + room;
    scale.reaches = budget.reaches;
    scale.is_held = budget.is_held;
    scale.role = budget.reaches ? ColourRole::good : ColourRole::shortfall;
    return scale;
}

}  // namespace

FocusBudgetRows focus_budget_rows(const Report& report) {
    FocusBudgetRows rows;
    rows.high = 0;
    for (const BudgetRow& row : report.budget.rows) {
        rows.bars.push_back(bar_of(row));
        rows.low = std::min({rows.low, rows.bars.back().from, rows.bars.back().to});
        rows.high = std::max({rows.high, rows.bars.back().from, rows.bars.back().to});
    }
    rows.high = std::max(rows.high, rows.low + 1);  // an axis has a length
    rows.travel = travel_scale(report.budget);
    return rows;
}

std::vector<BudgetBar> budget_by_part(const Report& report) {
    std::vector<BudgetRow> sums;
    for (const BudgetRow& row : report.budget.rows) {
        if (!row.part) continue;
        const auto same = std::find_if(sums.begin(), sums.end(),
                                       [&](const BudgetRow& sum) { return sum.part == row.part; });
        if (same == sums.end()) {
            sums.push_back(row);
        } else if (same->entry != BudgetEntry::available) {
            same->change += row.change;
            same->left = row.left;
            same->entry =
                same->change > Millimetres{} ? BudgetEntry::gives_back : BudgetEntry::spends;
        }
    }
    std::vector<BudgetBar> bars;
    for (const BudgetRow& sum : sums)
        bars.push_back(bar_of(sum));
    return bars;
}

}  // namespace beamfork
