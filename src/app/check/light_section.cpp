#include "app/check/check_sections.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>

namespace beamfork {

std::string magnification_text(const Setup& setup, const Report& report) {
    const auto told = [&](ResultId id) {
        const ResultInfo& result = info_of(id);
        return result.text(result.value(report));
    };
    const bool is_sharp = report.budget.reaches;
    std::string out =
        fmt::format("WHAT YOU GET{} ({} | {} | {})\n", is_sharp ? "" : " ONCE IN FOCUS",
                    setup.parts[report.train.choice.eyepiece].name,
                    setup.parts[report.train.choice.observer].name,
                    setup.parts[report.train.choice.target].name);
    out += fmt::format("  Magnification {}, true field {}, exit pupil {}\n",
                       told(ResultId::magnification), told(ResultId::true_field),
                       told(ResultId::exit_pupil));
    out += fmt::format("  Effective focal length {}, {} at the field stops, shifter factor {}\n",
                       told(ResultId::effective_focal_length), told(ResultId::focal_ratio),
                       told(ResultId::shifter_factor));
    if (report.magnification.image_turned)
        out += "  The image is turned by 180° by the lens that relays it\n";
    return out;
}

std::string light_at_stops_text(const Setup& setup, const Report& report) {
    std::string out = "LIGHT AT THE FIELD STOPS\n";
    for (const EyeClipping& eye : report.clipping) {
        out +=
            fmt::format("  {:<5} eye: fully lit {:.1f} of {:.1f} mm, edge {:.0f} %, working "
                        "aperture {:.0f} mm\n",
                        name_of(eye.eye), eye.fully_illuminated_diameter.value,
                        eye.field_stop.value, 100 * eye.edge_relative, eye.working_aperture.value);
        for (const EndShare& end : eye.rings.back().ends) {
            if (end.share < 0.005) continue;
            out += fmt::format("    edge loses {:>4.1f} % at {}\n", 100 * end.share,
                               end_name(setup, report.train.path(eye.eye), end));
        }
    }
    return out;
}

std::string light_at_stops_line(const Setup& /*setup*/, const Report& report) {
    const auto& [left, right] = report.clipping;
    const EyeClipping& eye = right.edge_relative < left.edge_relative - 0.005 ? right : left;
    return fmt::format("edge {:.0f} %, fully lit {:.1f} of {:.1f} mm, {:.0f} mm of aperture work",
                       100 * eye.edge_relative, eye.fully_illuminated_diameter.value,
                       eye.field_stop.value, eye.working_aperture.value);
}

}  // namespace beamfork
