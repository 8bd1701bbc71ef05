#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "scene/light/brightness_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// None where no light arrives: the loss has no end then.
Json magnitudes_json(double share) { return share > 0 ? Json(magnitudes(share)) : Json(nullptr); }

Json eye_brightness_json(const Setup& setup, const EyeBrightness& eye) {
    Json steps = Json::array();
    for (const LightStep& step : eye.steps) {
        steps.push_back({{"part", setup.parts[step.part].name},
                         {"face", step.face},
                         {"passes", step.passes},
                         {"why", step.why}});
    }
    return {{"magnitudes_lost", magnitudes_json(eye.total())},
            {"light_into_eye", eye.total()},
            {"on_axis", eye.on_axis},
            {"unobstructed", eye.unobstructed},
            {"into_pupil", eye.into_pupil},
            {"surface_brightness", eye.surface_brightness},
            {"steps", std::move(steps)}};
}

}  // namespace

Json throughput_json(const Setup& /*setup*/, const Report& report, std::size_t side) {
    return report.brightness.eyes[side].throughput;
}

Json brightness_json(const Setup& setup, const Report& report) {
    const Brightness& light = report.brightness;
    return {{"without_head_throughput", light.without_head},
            {"faintest_star_change_each_eye_mag", light.one_eye_change()},
            {"faintest_star_change_both_eyes_mag", light.two_eye_change()},
            {"light_difference", light.difference()},
            {"exit_pupil_mm", light.exit_pupil.value},
            {"eye_pupil_mm", light.eye_pupil.value},
            {"left_eye", eye_brightness_json(setup, light.eyes[0])},
            {"right_eye", eye_brightness_json(setup, light.eyes[1])}};
}

std::string brightness_line(const Setup& setup, const Report& report) {
    return first_sentence(brightness_rows(setup, report).sentence);
}

std::string brightness_text(const Setup& /*setup*/, const Report& report) {
    const Brightness& light = report.brightness;
    std::string out = "BRIGHTNESS\n";
    for (std::size_t side = 0; side < 2; ++side) {
        const EyeBrightness& eye = light.eyes[side];
        const std::string lost =
            eye.total() > 0 ? fmt::format(" ({:.2f} mag lost)", magnitudes(eye.total())) : "";
        out +=
            fmt::format("  {:<5} eye: throughput {:.1f} %, {:.1f} % of the light enters the "
                        "eye{}\n",
                        name_of(both_eyes.at(side)), 100 * eye.throughput, 100 * eye.total(), lost);
    }
    const auto two = light.two_eye_change();
    out += fmt::format("  Faintest star, against one eye without the head: each {:+.2f} mag, both "
                       "together {:+.2f} to {:+.2f} mag\n",
                       light.one_eye_change(), two[0], two[1]);
    out += fmt::format(
        "  Sky and nebulae look {:.1f} % as bright per area as to the naked eye, in the brighter "
        "eye\n",
        100 * std::max(light.eyes[0].surface_brightness, light.eyes[1].surface_brightness));
    return out;
}

}  // namespace beamfork
