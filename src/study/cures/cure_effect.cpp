#include "study/cures/cure_effect.hpp"

#include <algorithm>
#include <cmath>

#include "base/chance.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

class EffectLines {
public:
    void add(bool is_gain, const std::string& quantity, const std::string& change) {
        const auto place = is_gain
                               ? std::find_if(lines_.begin(), lines_.end(),
                                              [](const EffectLine& line) { return !line.is_gain; })
                               : lines_.end();
        lines_.insert(place, EffectLine{quantity, change, is_gain});
    }
    // `shown` is "{:.0f} to {:.0f} %"; more is better where `more` says so.
    void compare(const char* quantity,
                 double before,
                 double after,
                 double notable,
                 const char* shown,
                 bool more = true) {
        if (std::abs(after - before) < notable) return;
        add((after > before) == more, quantity, fmt::format(fmt::runtime(shown), before, after));
    }
    CureEffect take() { return std::move(lines_); }

private:
    CureEffect lines_;
};

double smaller_margin(const Report& report) {
    return std::min(report.budget.margin_in, report.budget.margin_out);
}

void compare_focus(EffectLines& lines, const Report& before, const Report& after) {
    const FocusBudget& budget = after.budget;
    const double margin = smaller_margin(after);
    constexpr double notable_mm = 0.5;
    if (std::abs(margin - smaller_margin(before)) < notable_mm) return;
    const bool is_gain = margin > smaller_margin(before) || margin >= thin_margin_mm;
    if (budget.reaches) {
        const bool inward = budget.margin_in < budget.margin_out;
        lines.add(is_gain, budget.primary ? "back focus left" : "travel left",
                  fmt::format("{:.1f} mm {}", margin, inward ? "inward" : "outward"));
    } else if (before.budget.reaches) {
        lines.add(is_gain, "focus is missed by", fmt::format("{:.1f} mm", -margin));
    } else {
        lines.add(is_gain, "focus is missed by",
                  fmt::format("{:.1f} instead of {:.1f} mm", -margin, -smaller_margin(before)));
    }
}

double edge_of_field(const Report& report) {
    return 100 * std::min(report.clipping[0].edge_relative, report.clipping[1].edge_relative);
}
double usable_aperture(const Report& report) {
    return std::min(report.clipping[0].working_aperture, report.clipping[1].working_aperture);
}
double sharpness_percent(const Report& report, PointImage EyeImage::*place) {
    const auto& [left, right] = report.image_quality;
    return 100 * std::min({1.0, left.kept(left.*place), right.kept(right.*place)});
}
double darker_light(const Report& report) {
    const auto& eyes = report.brightness.eyes;
    return 100 * std::min(eyes[0].total(), eyes[1].total());
}

double coma_taken(const Report& report) {
    double least = 1;
    for (const ComaCorrection& corrector : report.coma_corrections)
        least = std::min(least, corrector.share());
    return 100 * least;
}

// Short, and to be read in a row of words: "under 1", "over 99".
std::string spoken(double chance) {
    const std::string text = short_chance(chance);
    if (text.starts_with("< ")) return "under " + text.substr(2);
    return text.starts_with("> ") ? "over " + text.substr(2) : text;
}

void compare_chance(EffectLines& lines, double before, double after) {
    constexpr double that_counts = 0.02;
    if (std::abs(after - before) < that_counts) return;
    lines.add(after > before, "chance of focus",
              fmt::format("{} to {} %", spoken(before), spoken(after)));
}

void compare_magnification(EffectLines& lines, const Report& before, const Report& after) {
    const Magnification& then = before.magnification;
    const Magnification& now = after.magnification;
    if (std::abs(now.magnification / then.magnification - 1) < 0.02) return;
    lines.add(true, "magnification",
              fmt::format("{:.0f} to {:.0f}×", then.magnification, now.magnification));
    lines.add(now.true_field >= then.true_field, "true field",
              fmt::format("{:.2f} to {:.2f}°", then.true_field.value, now.true_field.value));
}

}  // namespace

CureEffect effect_of_cure(const Report& before, const Report& after) {
    EffectLines lines;
    compare_focus(lines, before, after);
    // Thresholds: what sampling makes, and what nobody notices; our own choice.
    if (before.coma_corrections.size() == after.coma_corrections.size())
        lines.compare("coma taken away", coma_taken(before), coma_taken(after), 3,
                      "{:.0f} to {:.0f} %");
    lines.compare("edge light", edge_of_field(before), edge_of_field(after), 4,
                  "{:.0f} to {:.0f} %");
    lines.compare("working aperture", usable_aperture(before), usable_aperture(after), 2,
                  "{:.0f} to {:.0f} mm");
    lines.compare("sharpness kept", sharpness_percent(before, &EyeImage::axis),
                  sharpness_percent(after, &EyeImage::axis), 3, "{:.0f} to {:.0f} %");
    lines.compare("sharpness kept at the edge", sharpness_percent(before, &EyeImage::edge),
                  sharpness_percent(after, &EyeImage::edge), 3, "{:.0f} to {:.0f} %");
    lines.compare("light to the darker eye", darker_light(before), darker_light(after), 2,
                  "{:.0f} to {:.0f} %");
    lines.compare("load on the focuser", before.fit.load.mass, after.fit.load.mass, 20,
                  "{:.0f} to {:.0f} g", false);
    compare_chance(lines, before.uncertainty.probability, after.uncertainty.probability);
    compare_magnification(lines, before, after);
    return lines.take();
}

std::string effect_text(const CureEffect& effect, bool gains) {
    std::string text;
    for (const EffectLine& line : effect) {
        if (line.is_gain != gains) continue;
        text += (text.empty() ? "" : "; ") + line.quantity + " " + line.change;
    }
    return text;
}

}  // namespace beamfork
