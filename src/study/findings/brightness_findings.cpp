#include <algorithm>

#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Limits by which brightness is judged; all of them common practice, no source.
constexpr double low_throughput = 0.70;  // of all faces and mirrors, the split left out
constexpr double unequal_light = 0.2;    // of the brighter eye's light
constexpr double dim_background = 0.02;  // surface brightness against the naked eye

double face_share(const LightStep& step) {
    return step.is_split || step.is_filter ? 1 : step.passes;
}

// Which eye a filter stands before: one in the chain meets the light before it is divided.
std::string eye_behind(const FindingScope& scope, const LightStep& step, std::size_t side) {
    if (role_of(scope.setup.parts[step.part]) == Role::chain) return "each eye";
    return fmt::format("the {} eye", name_of(both_eyes.at(side)));
}

// What filters with a stated transmission take.
void filter_findings(const FindingScope& scope) {
    for (std::size_t eye = 0; eye < 2; ++eye) {
        for (const LightStep& step : scope.report.brightness.eyes[eye].steps) {
            const bool is_told = eye == 1 && eye_behind(scope, step, eye) == "each eye";
            if (!step.is_filter || step.passes >= 1 || is_told) continue;
            scope.add(Severity::note, "filter_light",
                      fmt::format("A filter ({}) lets {:.3g} % of the light through to {}: {:.2f} "
                                  "magnitudes less.",
                                  scope.name(step.part), 100 * step.passes,
                                  eye_behind(scope, step, eye), magnitudes(step.passes)),
                      "", step.part);
        }
    }
}

void throughput_finding(const FindingScope& scope) {
    const auto& eyes = scope.report.brightness.eyes;
    const std::size_t darker = eyes[1].coatings < eyes[0].coatings ? 1 : 0;
    const EyeBrightness& eye = eyes[darker];
    if (eye.coatings >= low_throughput) return;
    const auto worst = std::min_element(
        eye.steps.begin(), eye.steps.end(),
        [](const LightStep& a, const LightStep& b) { return face_share(a) < face_share(b); });
    scope.add(
        Severity::note, "throughput_low",
        fmt::format("Faces and mirrors on the way to the {} eye keep {:.0f} % of the light back, "
                    "besides the division and filters; most at {}: {} ({}).",
                    name_of(both_eyes.at(darker)), 100 * (1 - eye.coatings),
                    scope.name(worst->part), worst->face, worst->why),
        "Coated faces and better mirrors win back up to that much.", worst->part);
}

void unequal_finding(const FindingScope& scope) {
    const Brightness& light = scope.report.brightness;
    if (light.difference() < unequal_light) return;
    const std::size_t darker = light.eyes[1].total() < light.eyes[0].total() ? 1 : 0;
    scope.add(Severity::poor, "unequal_light",
              fmt::format("The {} eye gets {:.0f} % less light than the other, {:.2f} magnitudes.",
                          name_of(both_eyes.at(darker)), 100 * light.difference(),
                          magnitudes(1 - light.difference())),
              "A division nearer to half and half, or clearing what stops light in that arm, evens "
              "it out.",
              scope.index_of(Role::splitter));
}

void dim_finding(const FindingScope& scope) {
    const auto& eyes = scope.report.brightness.eyes;
    const double brighter = std::max(eyes[0].surface_brightness, eyes[1].surface_brightness);
    if (brighter >= dim_background) return;
    scope.add(Severity::note, "dim_objects",
              fmt::format("Nebulae and galaxies look {:.1f} magnitudes dimmer per area than to the "
                          "naked eye.",
                          magnitudes(brighter)),
              "Moon, planets, double stars and bright clusters suit this; a longer eyepiece or a "
              "weaker shifter makes faint areas brighter.",
              scope.report.train.choice.eyepiece);
}

}  // namespace

void brightness_findings(const FindingScope& scope) {
    throughput_finding(scope);
    filter_findings(scope);
    unequal_finding(scope);
    dim_finding(scope);
}

}  // namespace beamfork
