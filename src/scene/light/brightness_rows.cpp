#include "scene/light/brightness_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "study/findings/report.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string percent(double share) { return format_number(100 * share, share > 0.0995 ? 1 : 2); }

std::string change(double magnitudes) { return typeset(format_signed(magnitudes, 2)); }

// Both eyes' lists as one, in an order that keeps each.
std::vector<BrightnessStepRow> merged_steps(const Setup& setup, const Brightness& light) {
    std::vector<BrightnessStepRow> rows;
    for (std::size_t side = 0; side < 2; ++side) {
        std::size_t next = 0;  // behind the row that this eye's last step went to
        double lost = 0;
        for (const LightStep& step : light.eyes[side].steps) {
            const std::string label = setup.parts.at(step.part).name + ": " + step.face;
            const auto begin = rows.begin() + static_cast<std::ptrdiff_t>(next);
            auto row = std::find_if(begin, rows.end(), [&](const BrightnessStepRow& other) {
                return other.label == label && other.part == step.part;
            });
            if (row == rows.end()) {
                row = rows.insert(side == 0 ? rows.end() : begin, BrightnessStepRow{});
                row->label = label;
                row->part = step.part;
                row->eyes[0].passes = row->eyes[1].passes = "–";
                row->help = "Light that goes on from here, of what arrives: " + step.why + ".";
            }
            const double more = magnitudes(step.passes);
            row->eyes[side] = {percent(step.passes), lost, lost + more};
            lost += more;
            next = static_cast<std::size_t>(row - rows.begin()) + 1;
        }
    }
    return rows;
}

std::vector<EyePairRow> eye_rows(const Brightness& light) {
    const auto row = [&](std::string label, std::string unit, std::string help, auto value) {
        return EyePairRow{std::move(label),
                          {value(light.eyes[0]), value(light.eyes[1])},
                          std::move(unit),
                          std::move(help)};
    };
    const ResultInfo& entering = info_of(ResultId::throughput);
    std::vector<EyePairRow> rows{
        row("Throughput", "%",
            "Of all faces, mirrors and the division together: their shares multiplied. Face losses "
            "are Fresnel's for uncoated glass, a quarter-wave layer of magnesium fluoride for one "
            "layer, 0.5 % for several (common practice).",
            [](const EyeBrightness& e) { return percent(e.throughput); }),
        row(std::string(entering.short_name()), "%", std::string(entering.help),
            [](const EyeBrightness& e) { return percent(e.total()); }),
        row("Lost", "mag", "The same as magnitudes: −2.5 times the logarithm of that share.",
            [](const EyeBrightness& e) { return format_number(magnitudes(e.total()), 2); }),
        row("Brightness of areas", "%",
            "Of sky and nebulae against the naked eye: throughput times the area of the exit pupil "
            "inside the eye's pupil over the eye pupil's area; no telescope exceeds its throughput "
            "(conservation of radiance; W. J. Smith, Modern Optical Engineering, 4th ed., sec. "
            "13.1).",
            [](const EyeBrightness& e) { return percent(e.surface_brightness); }),
    };
    if (light.eyes[0].unobstructed < 1) {
        rows.insert(
            rows.begin() + 1,
            row("Not in shadow", "%",
                "Share of the aperture that the secondary mirror leaves free: 1 less the square of "
                "its "
                "diameter, or its holder's, over the aperture, less the vanes' number times width "
                "times length from holder to rim over the aperture's area.",
                [](const EyeBrightness& e) { return percent(e.unobstructed); }));
    }
    return rows;
}

std::vector<ValueRow> both_rows(const Brightness& light) {
    const auto two = light.two_eye_change();
    return {
        {"Stars with each eye", change(light.one_eye_change()), "mag",
         "Limit for stars with one of the two eyes, against one eye at the same telescope with the "
         "head taken out: 2.5 times the logarithm of the ratio of throughputs, mean of both eyes."},
        {"Stars with both", change(two[0]) + " to " + change(two[1]), "mag",
         "The same with what two eyes gain in contrast: a factor of 1.41 (F. W. Campbell & D. G. "
         "Green, Nature 208, 1965) to 1.6 (Acta Psychologica 131(2), 2009). It is better seeing of "
         "faint contrast, not added light."},
        {"Exit pupil / eye's pupil",
         format_number(light.exit_pupil.value, 1) + " / " + format_number(light.eye_pupil.value, 1),
         "mm",
         "Width of the beam that leaves each eyepiece, and of the eye's own pupil in the dark: a "
         "wider beam loses its rim."},
        {"Eyes differ by", format_number(100 * light.difference(), 0), "%",
         "How much less light the dimmer eye gets. More than about 20 % is noticed (common "
         "practice, "
         "no source)."},
    };
}

std::string sentence_of(const Brightness& light) {
    const auto two = light.two_eye_change();
    const double mean = (light.eyes[0].throughput + light.eyes[1].throughput) / 2;
    return fmt::format(
        "Each eye gets {:.0f} % of the light; the faintest star for both eyes changes by "
        "{} to {} mag against one eye without the head.",
        100 * mean, change(two[0]), change(two[1]));
}

}  // namespace

BrightnessRows brightness_rows(const Setup& setup, const Report& report) {
    const Brightness& light = report.brightness;
    BrightnessRows rows;
    rows.sentence = sentence_of(light);
    rows.per_eye = eye_rows(light);
    rows.both = both_rows(light);
    rows.steps = merged_steps(setup, light);
    rows.most_lost = 0.01;
    for (const EyeBrightness& eye : light.eyes)
        rows.most_lost = std::max(rows.most_lost, magnitudes(eye.throughput));
    return rows;
}

}  // namespace beamfork
