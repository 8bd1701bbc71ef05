#include <cmath>

#include "app/check/check_sections.hpp"
#include "app/commands/page_text.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double um = 1000;  // per mm

Json point_json(const EyeImage& eye, const PointImage& image) {
    const auto widening = eye.widening(image);
    Json json{{"wavefront_rms_waves", image.rms_waves},
              {"strehl", image.day_peak},
              {"strehl_night", image.night_peak},
              {"strehl_green", image.green_peak},
              {"spherical_waves", image.aberrations.spherical},
              {"coma_waves", image.aberrations.coma},
              {"astigmatism_waves", image.aberrations.astigmatism},
              {"spot_rms_um", um * image.spot_rms},
              {"energy_in_airy_disc", image.energy_in_disc},
              {"best_focus_behind_stop_mm", image.focus}};
    json["resolution_arcsec"] = widening ? Json(eye.perfect_resolution * *widening) : Json();
    return json;
}

}  // namespace

Json image_quality_eye_json(const Setup& /*setup*/, const Report& report, std::size_t side) {
    const EyeImage& eye = report.image_quality[side];
    if (!eye.axis.is_formed) return Json();
    Json json = point_json(eye, eye.axis);
    json["focal_ratio"] = eye.focal_ratio;
    json["airy_radius_um"] = um * eye.airy_radius;
    json["depth_of_focus_mm"] = eye.depth_of_focus;
    json["perfect_resolution_arcsec"] = eye.perfect_resolution;
    json["spherical_mm"] = eye.spherical;
    const auto& doubt = report.figure_doubt;
    json["spherical_by_unknown_figure_waves"] =
        doubt ? Json::array({doubt->low, doubt->high}) : Json();
    json["axial_colour_mm"] = eye.axial_colour();
    json["blue_focus_mm"] = eye.blue_shift;
    json["red_focus_mm"] = eye.red_shift;
    json["lateral_colour_um"] = um * eye.edge.lateral_colour();
    json["corrected_for_glass"] = eye.is_corrected;
    json["edge"] = eye.edge.is_formed ? point_json(eye, eye.edge) : Json();
    return json;
}

std::string image_quality_text(const Setup& /*setup*/, const Report& report) {
    std::string out = "IMAGE QUALITY (at best focus; peak of a star against a perfect one's)\n";
    for (const EyeImage& eye : report.image_quality) {
        const std::string name = fmt::format("{:<5} eye", name_of(eye.eye));
        if (!eye.axis.is_formed) {
            out += fmt::format("  {}: too little light arrives on axis to make an image\n", name);
            continue;
        }
        const PointImage& axis = eye.axis;
        out += fmt::format(
            "  {}: {:.0f} % by day, {:.0f} % by night, {:.0f} % in green; {:.3f} waves rms\n", name,
            100 * axis.day_peak, 100 * axis.night_peak, 100 * axis.green_peak, axis.rms_waves);
        out += fmt::format("    spherical {:.2f} waves, {:.3f} mm; blue focuses {:+.3f} mm, red "
                           "{:+.3f} mm from green "
                           "(depth of focus {:.3f} mm)\n",
                           axis.aberrations.spherical, eye.spherical, eye.blue_shift, eye.red_shift,
                           eye.depth_of_focus);
        out += fmt::format("    spot {:.1f} µm rms, Airy radius {:.1f} µm, {:.0f} % of the light "
                           "in the Airy disc\n",
                           um * axis.spot_rms, um * eye.airy_radius, 100 * axis.energy_in_disc);
        if (eye.edge.is_formed) {
            out += fmt::format("    at the edge {:.0f} % by day; coma {:.2f}, astigmatism {:.2f} "
                               "waves; blue and red "
                               "{:.1f} µm apart\n",
                               100 * eye.edge.day_peak, eye.edge.aberrations.coma,
                               eye.edge.aberrations.astigmatism, um * eye.edge.lateral_colour());
        }
    }
    if (report.figure_doubt && report.figure_doubt->matters())
        out += wrapped("  ", report.figure_doubt->sentence(), 2);
    return out;
}

}  // namespace beamfork
