#include "study/cure_effect.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace beamfork {

namespace {

class EffectWords {
public:
    void add(bool is_gain, const std::string& words) {
        std::string& list = is_gain ? effect_.gains : effect_.losses;
        list += (list.empty() ? "" : "; ") + words;
    }
    // `shown` is "edge light {:.0f} to {:.0f} %"; more is better where `more` says so.
    void compare(double before, double after, double notable, const char* shown, bool more = true) {
        if (std::abs(after - before) < notable) return;
        add((after > before) == more, fmt::format(fmt::runtime(shown), before, after));
    }
    CureEffect take() { return std::move(effect_); }

private:
    CureEffect effect_;
};

double smaller_margin(const Report& report) {
    return std::min(report.budget.margin_in, report.budget.margin_out);
}

void compare_focus(EffectWords& words, const Report& before, const Report& after) {
    const FocusBudget& budget = after.budget;
    const double margin = smaller_margin(after);
    constexpr double notable_mm = 0.5;
    if (std::abs(margin - smaller_margin(before)) < notable_mm) return;
    const bool inward = budget.margin_in < budget.margin_out;
    const std::string room = budget.primary ? "mm of back focus" : "mm of travel";
    const std::string words_now =
        budget.reaches
            ? fmt::format("{:.1f} {} left {}", margin, room, inward ? "inward" : "outward")
        : before.budget.reaches ? fmt::format("focus is missed by {:.1f} mm", -margin)
                                : fmt::format("focus is missed by {:.1f} mm instead of {:.1f} mm",
                                              -margin, -smaller_margin(before));
    words.add(margin > smaller_margin(before) || margin >= thin_margin_mm, words_now);
}

double edge_of_field(const Report& report) {
    return 100 * std::min(report.clipping[0].edge_relative, report.clipping[1].edge_relative);
}
double usable_aperture(const Report& report) {
    return std::min(report.clipping[0].working_aperture, report.clipping[1].working_aperture);
}
double axis_peak_percent(const Report& report) {
    return 100
           * std::min(report.image_quality[0].axis.day_peak, report.image_quality[1].axis.day_peak);
}
double darker_light(const Report& report) {
    const auto& eyes = report.brightness.eyes;
    return 100 * std::min(eyes[0].total(), eyes[1].total());
}

}  // namespace

CureEffect effect_of_cure(const Report& before, const Report& after) {
    EffectWords words;
    compare_focus(words, before, after);
    // Thresholds: what sampling makes, and what nobody notices; our own choice.
    words.compare(edge_of_field(before), edge_of_field(after), 4, "edge light {:.0f} to {:.0f} %");
    words.compare(usable_aperture(before), usable_aperture(after), 2,
                  "working aperture {:.0f} to {:.0f} mm");
    words.compare(axis_peak_percent(before), axis_peak_percent(after), 3,
                  "sharpness {:.0f} to {:.0f} % of the perfect peak");
    words.compare(darker_light(before), darker_light(after), 2,
                  "light to the darker eye {:.0f} to {:.0f} %");
    words.compare(before.fit.load.mass, after.fit.load.mass, 20,
                  "load on the focuser {:.0f} to {:.0f} g", false);
    words.compare(100 * before.uncertainty.probability, 100 * after.uncertainty.probability, 2,
                  "chance of focus {:.0f} to {:.0f} %");
    const double power = before.magnification.magnification;
    const double power_now = after.magnification.magnification;
    if (std::abs(power_now / power - 1) > 0.01) {
        words.add(true, fmt::format("magnification {:.0f} to {:.0f}×", power, power_now));
        words.add(true,
                  fmt::format("true field {:.2f} to {:.2f}°", before.magnification.true_field.value,
                              after.magnification.true_field.value));
    }
    return words.take();
}

}  // namespace beamfork
