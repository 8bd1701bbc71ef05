#include "study/cures/cure_effect.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "study/results/results.hpp"

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
    CureEffect take() { return std::move(lines_); }

private:
    CureEffect lines_;
};

double smaller_margin(const Report& report) {
    return info_of(ResultId::focus_margin).value(report);
}

void compare_focus(EffectLines& lines, const Report& before, const Report& after) {
    const FocusBudget& budget = after.budget;
    const double margin = smaller_margin(after);
    constexpr double notable_mm = 0.5;
    if (std::abs(margin - smaller_margin(before)) < notable_mm) return;
    const bool is_gain = margin > smaller_margin(before) || margin >= thin_margin.value;
    if (budget.seats_take_up != Millimetres{}) {
        lines.add(is_gain, "focus by the seats", seats_words(budget));
    } else if (budget.reaches) {
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

double coma_taken(const Report& report) {
    double least = 1;
    for (const ComaCorrection& corrector : report.coma_corrections)
        least = std::min(least, corrector.share());
    return 100 * least;
}

void compare_coma(EffectLines& lines, const Report& before, const Report& after) {
    if (before.coma_corrections.size() != after.coma_corrections.size()) return;
    const double then = coma_taken(before);
    const double now = coma_taken(after);
    constexpr double notable_percent = 3;
    if (std::abs(now - then) < notable_percent) return;
    lines.add(now > then, "coma taken away", fmt::format("{:.0f} to {:.0f} %", then, now));
}

// To be read in a row of words: "under 1", "over 99"; shares in whole percent.
std::string spoken(const ResultInfo& info, double value) {
    if (info.unit == FieldUnit::percent && info.decimals > 0) return format_number(value, 0);
    const std::string text = info.number(value);
    if (text.starts_with("< ")) return "under " + text.substr(2);
    return text.starts_with("> ") ? "over " + text.substr(2) : text;
}

void tell(EffectLines& lines, bool is_gain, const ResultInfo& info, double before, double after) {
    const std::string then = spoken(info, before);
    const std::string now = with_symbol(spoken(info, after), info.unit);
    const bool is_bound = then.starts_with("under") || then.starts_with("over");
    lines.add(is_gain, std::string(info.in_words),
              is_bound ? fmt::format("from {} to {}", with_symbol(then, info.unit), now)
                       : fmt::format("{} to {}", then, now));
}

// What a change must exceed to be told, in the result's unit: what sampling makes, and what nobody notices; our own choice.
struct Noticed {
    ResultId result;
    double from;
};
constexpr std::array noticed{
    Noticed{ResultId::edge_light, 4},   Noticed{ResultId::working_aperture, 2},
    Noticed{ResultId::sharpness, 3},    Noticed{ResultId::edge_sharpness, 3},
    Noticed{ResultId::throughput, 2},   Noticed{ResultId::load, 20},
    Noticed{ResultId::focus_chance, 2},
};

void compare(EffectLines& lines, const Noticed& one, const Report& before, const Report& after) {
    const ResultInfo& info = info_of(one.result);
    const double then = info.value(before);
    const double now = info.value(after);
    if (std::abs(now - then) < one.from) return;
    tell(lines, (now > then) == (info.better != Better::less), info, then, now);
}

void compare_magnification(EffectLines& lines, const Report& before, const Report& after) {
    const ResultInfo& power = info_of(ResultId::magnification);
    const ResultInfo& field = info_of(ResultId::true_field);
    if (std::abs(power.value(after) / power.value(before) - 1) < 0.02) return;
    tell(lines, true, power, power.value(before), power.value(after));
    tell(lines, field.value(after) >= field.value(before), field, field.value(before),
         field.value(after));
}

}  // namespace

CureEffect effect_of_cure(const Report& before, const Report& after) {
    EffectLines lines;
    compare_focus(lines, before, after);
    compare_coma(lines, before, after);
    for (const Noticed& one : noticed)
        compare(lines, one, before, after);
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
