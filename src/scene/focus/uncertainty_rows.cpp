#include "scene/focus/uncertainty_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/chance.hpp"
#include "base/text.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Of a sum: all of it may come from one.
std::string percent(double share) {
    return share == 1 || share == 0 ? format_number(100 * share, 0) : format_chance(share);
}

// How thick chances lie over the travel and four standard deviations either side of focus.
void add_density(UncertaintyRows& rows, const Setup& setup, const Uncertainty& found) {
    constexpr int points = 121;
    const double reach = 4 * std::max(found.standard, Millimetres{0.05}).value;
    rows.low = std::min(0.0, found.drawtube.value - reach);
    rows.high = std::max(found.travel.value, found.drawtube.value + reach);
    const double room = 0.03 * (rows.high - rows.low);
    rows.low -= room;
    rows.high += room;
    const ChanceCurve curve = margin_curve(setup, found);
    const double near = (rows.high - rows.low) / (points - 1) / 2;
    for (int i = 0; i < points; ++i) {
        const double at = rows.low + (rows.high - rows.low) * i / (points - 1);
        rows.density.push_back(curve.below(at + near - found.drawtube.value)
                               - curve.below(at - near - found.drawtube.value));
    }
    const double most = *std::max_element(rows.density.begin(), rows.density.end());
    for (double& one : rows.density)
        one = most > 0 ? one / most : 0;
}

std::string assumed_sentence(const Uncertainty& found) {
    if (found.assumed == 0) return "";
    return fmt::format(
        "± is assumed where none is stated ({} of {}): {} mm for a datasheet’s length, {} mm for a "
        "measured one, {} mm for a "
        "guess; common practice, no source. Select a part and state what you know better.",
        found.assumed, found.contributions.size(),
        format_exact(usual_plus_minus_mm(KnownBy::datasheet)),
        format_exact(usual_plus_minus_mm(KnownBy::measured)),
        format_exact(usual_plus_minus_mm(KnownBy::guessed)));
}

std::string place_sentence(const Uncertainty& found) {
    if (found.is_by_mirror) {
        return fmt::format(
            "The main mirror leaves {} ± {} mm of the {} mm by which it moves the back focus; "
            "chance of too far in {} %, too far out {} %.",
            format_number(found.drawtube.value, 1), format_number(found.standard.value, 1),
            format_number(found.travel.value, 0), format_chance(found.too_far_in),
            format_chance(found.too_far_out));
    }
    return fmt::format(
        "Focus at {} ± {} mm of 0 to {} mm; chance of too far in {} %, too far out {} %.",
        format_number(found.drawtube.value, 1), format_number(found.standard.value, 1),
        format_number(found.travel.value, 0), format_chance(found.too_far_in),
        format_chance(found.too_far_out));
}

ContributionRow row_of(const Setup& setup, const Contribution& one) {
    const std::string unit(symbol(one.unit));
    return {one.part,
            setup.parts[one.part].name + ": " + one.label,
            fmt::format("±{} {}{}, {}", format_exact(*one.tolerance.plus_minus), unit,
                        one.is_assumed ? " assumed" : "", to_word(one.tolerance.known_by)),
            one.is_assumed,
            one.share,
            percent(one.share),
            fmt::format("Moves focus by {:.2f} mm for each {} and so adds {:.2f} mm of standard "
                        "deviation: {} % of the variance. {}{}",
                        std::abs(one.sensitivity), unit.empty() ? "unit" : unit, one.standard.value,
                        percent(one.share),
                        one.is_assumed ? "Nobody stated this ±: it is the usual one (common "
                                         "practice, no source). "
                                       : "",
                        one.tolerance.known_by == KnownBy::measured
                            ? "Measured: ± is one standard deviation."
                            : "Anywhere within ± with equal chance: ± over the square root of 3 "
                              "(GUM, JCGM 100:2008, 4.3.7).")};
}

std::string advice_of(const Setup& setup, const Uncertainty& found) {
    constexpr double that_shows = 0.005;  // of the chance, which is told in whole percent
    if (!found.better || std::abs(found.better->probability - found.probability) < that_shows)
        return "";
    const Contribution& largest = found.contributions.front();
    return fmt::format("Worth measuring: {} of {}. Known to ±{:.2g} {} and unchanged, focus would "
                       "be {} % sure. {}",
                       largest.label, setup.parts[largest.part].name, found.better->plus_minus,
                       symbol(largest.unit), format_chance(found.better->probability),
                       home_measurement(setup.parts[largest.part].body, largest.key));
}

}  // namespace

UncertaintyRows uncertainty_rows(const Setup& setup, const Report& report) {
    const Uncertainty& found = report.uncertainty;
    UncertaintyRows rows;
    rows.is_stated = !found.contributions.empty();
    rows.travel = found.travel.value;
    rows.drawtube = found.drawtube.value;
    rows.help = "Chance that focus lies within the drawtube's travel, the seats left to the eyes: "
                "what each ± moves it, anywhere within ± with equal chance or, where measured, "
                "normally, folded about the stated position (convolution; variances add, GUM, JCGM "
                "100:2008, eq. 10).";
    if (!rows.is_stated) {
        rows.sentence = "No value whose ± is known or usual moves the focus here.";
        return rows;
    }
    rows.headline = format_chance(found.probability) + " % sure";
    rows.role = found.probability >= 0.95 ? ColourRole::good
                : found.probability > 0.5 ? ColourRole::dimension
                                          : ColourRole::shortfall;
    rows.sentence = place_sentence(found);
    rows.assumed = assumed_sentence(found);
    rows.advice = advice_of(setup, found);
    add_density(rows, setup, found);
    for (const Contribution& one : found.contributions)
        rows.contributions.push_back(row_of(setup, one));
    return rows;
}

std::vector<OtherUseRow> other_uses_rows(const Setup& setup, const Report& report) {
    std::vector<OtherUseRow> rows;
    for (const OtherUse& use : report.other_uses) {
        OtherUseRow row;
        row.role = use.reaches ? ColourRole::good : ColourRole::shortfall;
        row.label = use.use == Use::one_eye            ? "One eye, without the head"
                    : use.use == Use::straight_through ? "Straight through"
                                                       : "Without the shifter";
        row.value = use.reaches ? fmt::format("reaches at {:.1f} mm", use.drawtube.value)
                                : fmt::format("{:.1f} mm too far {}", use.shortfall.value,
                                              use.shortfall_is_inward ? "in" : "out");
        std::string parts;
        for (const std::size_t part : use.removed)
            parts += (parts.empty() ? "" : ", ") + setup.parts[part].name;
        row.help =
            fmt::format("Taken out: {}. Focus moves {:.1f} mm {}; back focus less the light "
                        "path of what remains (focus budget).",
                        parts, abs(use.change).value, use.change < Millimetres{} ? "in" : "out");
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace beamfork
