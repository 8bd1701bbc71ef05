#include "scene/ways_to_focus_rows.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string effect_of(const WayToFocus& way) {
    std::string text = way.gained >= 0 ? fmt::format("gives back {:.1f} mm", way.gained)
                                       : fmt::format("takes {:.1f} mm", -way.gained);
    if (way.reaches) {
        const bool inward = way.margin_in < way.margin_out;
        text += fmt::format("; {:.1f} mm of travel left {}",
                            std::min(way.margin_in, way.margin_out), inward ? "inward" : "outward");
    } else {
        text += fmt::format("; still {:.1f} mm short", -std::min(way.margin_in, way.margin_out));
    }
    if (std::abs(way.magnification_ratio - 1) > 0.005)
        text += fmt::format("; {:.2f}× the magnification", way.magnification_ratio);
    return text;
}

std::string capital(std::string words) {
    if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    return words;
}

}  // namespace

std::vector<WayRow> ways_to_focus_rows(const Report& report) {
    std::vector<WayRow> rows;
    for (const WayToFocus& way : report.ways_to_focus) {
        WayRow row;
        const bool is_barely = std::min(way.margin_in, way.margin_out) < thin_margin_mm - 0.1;
        if (!way.reaches) {
            row.sign = FindingSign::cross;
            row.role = ColourRole::clipped;
        } else if (is_barely) {
            row.sign = FindingSign::triangle;
            row.role = ColourRole::shortfall;
        }
        row.what = way.what;
        row.effect = effect_of(way);
        row.cost = capital(to_words(way.reversibility)) + ". " + way.cost;
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string ways_to_focus_sentence(const Report& report) {
    const FocusBudget& budget = report.budget;
    const double margin = std::min(budget.margin_in, budget.margin_out);
    if (margin >= thin_margin_mm) {
        return fmt::format("Focus is reached with {:.1f} mm to spare: nothing need be changed.",
                           margin);
    }
    const bool inward = budget.margin_in < budget.margin_out;
    const std::string wanted = fmt::format(
        "{:.1f} mm {} wanted, {:.0f} mm of spare travel included", thin_margin_mm - margin,
        inward ? "of light path are" : "of added length are", thin_margin_mm);
    return report.ways_to_focus.empty() ? wanted + "; no single change here gives it."
                                        : wanted + ". Best first:";
}

}  // namespace beamfork
