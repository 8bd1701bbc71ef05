// The focus budget on paper: a waterfall of bars with their numbers, and the drawtube's travel.
#include <algorithm>

#include "base/letters.hpp"
#include "base/text.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "scene/sheet/sheet_drawings.hpp"
#include "scene/sheet/sheet_svg.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double budget_width = 720;
constexpr double label_width = 250;
constexpr double value_width = 60;
constexpr double bar_pitch = 20;
constexpr double bar_height = 13;
constexpr double travel_height = 74;

// Ink and pattern tell what gives and what takes; the sign of the number says it too.
std::string_view bar_style(BudgetEntry entry) {
    switch (entry) {
    case BudgetEntry::available: return "bar gives";
    case BudgetEntry::gives_back: return "bar gives";
    case BudgetEntry::left_over: return "bar total";
    default: return "bar takes";
    }
}

std::string short_label(const std::string& label, double width) {
    std::string_view cut = label;
    while (about_width(cut, 11) > width)
        cut = without_last_letter(cut);
    return cut.size() < label.size() ? std::string(cut) + "…" : label;
}

double drawn_x(double value, double low, double high) {
    const double room = budget_width - label_width - value_width - 10;
    return label_width + room * (value - low) / (high - low);
}

void draw_travel_scale(SheetSvg& svg, const Report& report, const TravelScale& scale, double top) {
    const auto x = [&](double value) { return drawn_x(value, scale.low, scale.high); };
    const double y = top + 30;
    svg.words({0, y + 4}, report.budget.primary ? "Main mirror's travel" : "Drawtube's travel",
              "label", "start");
    svg.rect({x(0), y - 5}, {x(scale.travel) - x(0), 10}, "travel");
    svg.words({x(0), y + 20}, "0", "small", "middle");
    svg.words({x(scale.travel), y + 20}, format_number(scale.travel, 0) + " mm", "small", "middle");
    svg.line({x(scale.present), y - 9}, {x(scale.present), y + 9}, "stroke bold");
    svg.diamond({x(scale.wanted), y}, 6, scale.reaches ? "mark good" : "mark short");
    svg.words({x(scale.wanted), y - 13}, "focus " + typeset(format_number(scale.wanted, 1)),
              "small", "middle");
    svg.words({budget_width, y + 36}, scale.margin_in + ", " + scale.margin_out, "small", "end");
}

}  // namespace

std::string sheet_focus_budget(const Report& report) {
    const FocusBudgetRows rows = focus_budget_rows(report);
    const double bars = bar_pitch * static_cast<double>(rows.bars.size());
    SheetSvg svg(budget_width, bars + travel_height + 4, "budget", "Focus budget as a waterfall");
    const auto x = [&](double value) { return drawn_x(value, rows.low, rows.high); };
    svg.line({x(0), 0}, {x(0), bars}, "axis");
    double y = 4;
    for (const BudgetBar& bar : rows.bars) {
        const double from = std::min(x(bar.from), x(bar.to));
        const double width = std::max(std::abs(x(bar.to) - x(bar.from)), 0.6);
        svg.words({0, y + 10}, short_label(bar.label, label_width - 8), "label", "start");
        svg.rect({from, y}, {width, bar_height}, bar_style(bar.entry));
        if (bar.entry != BudgetEntry::left_over)
            svg.line({x(bar.to), y}, {x(bar.to), y + bar_pitch + bar_height}, "leader");
        svg.words({budget_width, y + 10}, typeset(bar.value),
                  bar.entry == BudgetEntry::left_over ? "number strong" : "number", "end");
        y += bar_pitch;
    }
    draw_travel_scale(svg, report, rows.travel, bars);
    return svg.text();
}

}  // namespace beamfork
