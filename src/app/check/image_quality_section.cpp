#include <cmath>

#include "app/check/check_sections.hpp"
#include "app/page/page_text.hpp"
#include "scene/image/image_quality_rows.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

Json point_json(const EyeImage& eye, const PointImage& image) {
    const auto widening = eye.widening(image);
    Json json{{"wavefront_rms_waves", image.rms_waves},
              {"strehl", image.white_peak},
              {"strehl_green", image.green_peak},
              {"strehl_through_eye", image.seen_peak},
              {"sharpness_kept", eye.kept(image)},
              {"blur_arcmin", image.blur.value},
              {"spherical_waves", image.aberrations.spherical},
              {"coma_waves", image.aberrations.coma},
              {"astigmatism_waves", image.aberrations.astigmatism},
              {"spot_rms_um", to_micrometres(image.spot_rms).value},
              {"energy_in_airy_disc", image.energy_in_disc},
              {"best_focus_behind_stop_mm", image.focus.value}};
    json["resolution_arcsec"] = widening ? Json(eye.perfect_resolution.value * *widening) : Json();
    return json;
}

}  // namespace

Json image_quality_eye_json(const Setup& /*setup*/, const Report& report, std::size_t side) {
    const EyeImage& eye = report.image_quality[side];
    if (!eye.axis.is_formed) return Json();
    Json json = point_json(eye, eye.axis);
    json["working_focal_ratio"] = eye.working_focal_ratio;
    json["airy_radius_um"] = to_micrometres(eye.airy_radius).value;
    json["depth_of_focus_mm"] = eye.depth_of_focus.value;
    json["perfect_resolution_arcsec"] = eye.perfect_resolution.value;
    json["spherical_mm"] = eye.spherical.value;
    const auto& doubt = report.figure_doubt;
    json["spherical_by_unknown_figure_waves"] =
        doubt ? Json::array({doubt->low, doubt->high}) : Json();
    json["axial_colour_mm"] = eye.axial_colour().value;
    json["blue_focus_mm"] = eye.blue_shift.value;
    json["red_focus_mm"] = eye.red_shift.value;
    json["pupil_mm"] = eye.pupil.value;
    json["strehl_without_head"] = eye.bare_peak;
    json["soft_from_magnification"] =
        eye.shows_from ? Json(*eye.shows_from * report.magnification.magnification) : Json();
    const bool has_edge = eye.edge.is_formed;  // else its colour is unknown
    json["lateral_colour_um"] =
        has_edge ? Json(to_micrometres(eye.edge.lateral_colour()).value) : Json();
    json["lateral_colour_arcmin"] = has_edge ? Json(eye.edge.colour_seen.value) : Json();
    json["corrected_for_glass"] = eye.is_corrected;
    json["edge"] = eye.edge.is_formed ? point_json(eye, eye.edge) : Json();
    return json;
}

std::string image_quality_line(const Setup&, const Report& report) {
    return first_sentence(image_quality_rows(report).sentence);
}

std::string image_quality_text(const Setup& /*setup*/, const Report& report) {
    std::string out =
        "IMAGE QUALITY (at best focus; kept: of a star's peak in white light, as this eye "
        "sees it without the head)\n";
    for (const EyeImage& eye : report.image_quality) {
        const std::string name = fmt::format("{:<5} eye", name_of(eye.eye));
        if (!eye.axis.is_formed) {
            out += fmt::format("  {}: too little light arrives on axis to make an image\n", name);
            continue;
        }
        const PointImage& axis = eye.axis;
        out +=
            fmt::format("  {}: {:.0f} % kept at {:.1f} mm of exit pupil ({:.0f} % through the eye, "
                        "{:.0f} % without head), blur {:.1f}′\n",
                        name, 100 * eye.kept(axis), eye.pupil.value, 100 * axis.seen_peak,
                        100 * eye.bare_peak, axis.blur.value);
        out += fmt::format("    before the eye {:.0f} %, in green {:.0f} %; {:.3f} waves rms\n",
                           100 * axis.white_peak, 100 * axis.green_peak, axis.rms_waves);
        out += fmt::format("    spherical {:.2f} waves, {:.3f} mm; blue focuses {:+.3f} mm, red "
                           "{:+.3f} mm from green "
                           "(depth of focus {:.3f} mm)\n",
                           axis.aberrations.spherical, eye.spherical.value, eye.blue_shift.value,
                           eye.red_shift.value, eye.depth_of_focus.value);
        out += fmt::format("    spot {:.1f} µm rms, Airy radius {:.1f} µm, {:.0f} % of the light "
                           "in the Airy disc\n",
                           to_micrometres(axis.spot_rms).value,
                           to_micrometres(eye.airy_radius).value, 100 * axis.energy_in_disc);
        if (eye.edge.is_formed) {
            out += fmt::format(
                "    at the edge {:.0f} % kept, {:.0f} % before the eye; coma {:.2f}, "
                "astigmatism {:.2f} waves; blue and red {:.1f}′ apart\n",
                100 * eye.kept(eye.edge), 100 * eye.edge.white_peak, eye.edge.aberrations.coma,
                eye.edge.aberrations.astigmatism, eye.edge.colour_seen.value);
        } else {
            out += "    at the edge too little light for an image: its colour is unknown\n";
        }
    }
    if (report.figure_doubt && report.figure_doubt->matters())
        out += wrapped("  ", report.figure_doubt->sentence(), 2);
    return out;
}

}  // namespace beamfork
