#include "scene/image/image_quality_rows.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "study/findings/report.hpp"
#include "study/focus/diffraction.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double um_per_mm = to_micrometres(Millimetres{1}).value;
constexpr int radius_count = 21;
const std::string not_formed = "–";

std::vector<ValueRow> seen_values(const EyeImage& eye, const PointImage& image) {
    const auto percent = [&](double share) {
        return image.is_formed ? format_number(100 * share, 0) : not_formed;
    };
    return {
        {"Sharpness kept", percent(eye.kept(image)), "%",
         fmt::format("Peak of a star in white light through this eye, over what the same telescope "
                     "and magnification have without head and glass ({:.0f} %): by CIE 1924 "
                     "V(lambda) and the eye's own colour error (Thibos, Ye, Zhang, Bradley, 1992), "
                     "at {:.1f} mm of exit pupil. From 90 % on nobody misses any; above 100 % the "
                     "glass undoes some of the eye's colour.",
                     100 * eye.bare_peak, eye.pupil.value)},
        {"Blur at the eye", image.is_formed ? format_number(image.blur.value, 1) : not_formed, "′",
         "Width under which a star is seen: twice the root-mean-square radius of where its light "
         "lands, the eye's own colour error included, diffraction not. Below 1.5′ none is seen."},
        {"Colour at the eye",
         image.is_formed ? format_number(image.colour_seen.value, 1) : not_formed, "′",
         "Lateral colour: how far blue (486 nm) and red (656 nm) images of a star stand apart, by "
         "their chief rays, over the eyepiece's focal length. Below 1.5′ none is seen."},
    };
}

std::vector<ValueRow> peak_values(const PointImage& image) {
    const auto percent = [&](double share) {
        return image.is_formed ? format_number(100 * share, 0) : not_formed;
    };
    return {
        {"Peak in white light", percent(image.white_peak), "%",
         "Height of a star's peak over a perfect one's before any eye looks, in white light: the "
         "squared mean of the waves over all rays (Strehl's ratio), integrated over CIE 1924 "
         "V(lambda)."},
        {"Peak in green", percent(image.green_peak), "%",
         "The same in green light alone (546 nm): what is left when colour does not count."},
    };
}

std::vector<ValueRow> wave_values(const PointImage& image) {
    const auto waves = [&](double value, int decimals) {
        return image.is_formed ? format_number(value, decimals) : not_formed;
    };
    return {
        {"Wavefront, rms", waves(image.rms_waves, 3), "λ",
         "Root-mean-square error of the green wavefront against the best-fit sphere, in "
         "wavelengths. 0.071 leaves "
         "80 %."},
        {"Spherical", waves(image.aberrations.spherical, 2), "λ",
         "Path error of the rim against the middle, in wavelengths: the r^4 term of the fit "
         "(W040). A plate of glass "
         "t makes t (n² - 1) / (128 n³ N^4) (Smith, sec. 7.8)."},
        {"Coma", waves(image.aberrations.coma, 2), "λ",
         "The r³ term of the fit (W131), from light that meets glass or mirrors aslant."},
        {"Astigmatism", waves(image.aberrations.astigmatism, 2), "λ",
         "The r² cos² term of the fit (W222), from light that meets glass aslant."},
    };
}

std::vector<ValueRow> colour_values(const EyeImage& eye, const PointImage& image) {
    const auto in_um = [&](Millimetres length) {
        return image.is_formed ? format_number(to_micrometres(length).value, 1) : not_formed;
    };
    return {
        {"Blue focus", format_number(eye.blue_shift.value, 2), "mm",
         fmt::format("How far behind the green focus blue light (486 nm) comes to its own. The "
                     "depth of focus, "
                     "2 wavelengths times the square of the f-number, is {:.3f} mm.",
                     eye.depth_of_focus.value)},
        {"Red focus", format_number(eye.red_shift.value, 2), "mm",
         "How far behind the green focus red light (656 nm) comes to its own; negative: before "
         "it."},
        {"Colour apart", in_um(image.lateral_colour()), "µm",
         "Lateral colour: distance of the blue image from the red one across the field, by their "
         "chief rays."},
    };
}

std::vector<ValueRow> size_values(const EyeImage& eye, const PointImage& image) {
    const auto in_um = [&](Millimetres length) {
        return image.is_formed ? format_number(to_micrometres(length).value, 1) : not_formed;
    };
    const auto widening = eye.widening(image);
    std::string resolution = not_formed;
    if (image.is_formed)
        resolution = widening ? format_number(eye.perfect_resolution.value * *widening, 2) : "> 5";
    return {
        {"Spot, rms", in_um(image.spot_rms), "µm",
         fmt::format("Root-mean-square radius of where the rays land, in white light. "
                     "The Airy disc's "
                     "radius, 1.22 wavelengths times the f-number, is {:.1f} µm.",
                     to_micrometres(eye.airy_radius).value)},
        {"In the Airy disc",
         image.is_formed ? format_number(100 * image.energy_in_disc, 0) : not_formed, "%",
         "Share of the light inside the Airy disc's radius, by summing waves over all rays; a "
         "perfect image has "
         "84 % there."},
        {"Resolution", resolution, "″",
         fmt::format("Closest double star: 1.22 wavelengths over the aperture, {:.2f}″, widened as "
                     "the circle that "
                     "holds half of the light is.",
                     eye.perfect_resolution.value)},
    };
}

ImagePointRows point_rows(const EyeImage& eye,
                          const PointImage& image,
                          std::string name,
                          const std::vector<double>& radii) {
    ImagePointRows rows;
    rows.name = std::move(name);
    rows.is_formed = image.is_formed;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        for (const glm::dvec2& at : image.spots[w]) {
            rows.spots[w].push_back(um_per_mm * at);
            rows.widest = std::max(rows.widest, um_per_mm * glm::length(at));
        }
    }
    for (const double radius : radii)
        rows.energy.push_back(
            image.is_formed ? energy_within(image.spread, to_millimetres(Micrometres{radius})) : 0);
    for (const auto& values : {seen_values(eye, image), peak_values(image), wave_values(image),
                               colour_values(eye, image), size_values(eye, image)})
        rows.values.insert(rows.values.end(), values.begin(), values.end());
    return rows;
}

std::string fault_name(ImageFault fault) {
    switch (fault) {
    case ImageFault::colour: return "mostly by colour";
    case ImageFault::spherical: return "mostly by spherical aberration";
    case ImageFault::coma: return "mostly by coma";
    case ImageFault::astigmatism: return "mostly by astigmatism";
    case ImageFault::nothing:
    case ImageFault::other: return "";
    }
    return "";
}

std::string sentence_of(const Report& report) {
    const auto& [left, right] = report.image_quality;
    if (!left.axis.is_formed && !right.axis.is_formed)
        return "Too little light arrives on axis to make an image.";
    const bool is_right =
        !left.axis.is_formed
        || (right.axis.is_formed && right.kept(right.axis) < left.kept(left.axis));
    const EyeImage& worse = is_right ? right : left;
    const double kept = 100 * worse.kept(worse.axis);
    std::string sentence;
    switch (sharpness_of(worse, worse.axis)) {
    case Sharpness::good: sentence = "The glass costs no sharpness that is seen"; break;
    case Sharpness::hidden:
        sentence = "The glass costs sharpness that so wide an exit pupil hides";
        break;
    case Sharpness::fair: sentence = "The glass costs some sharpness"; break;
    case Sharpness::soft: sentence = "The glass costs sharpness"; break;
    }
    constexpr double clearly_more = 102;
    if (kept > clearly_more) {
        sentence = "The glass costs no sharpness: it even undoes some of the eye's own colour";
    } else {
        const std::string fault = fault_name(main_fault(worse, worse.axis));
        sentence += fmt::format(": {:.0f} % of it is kept through this eye{}{}", kept,
                                fault.empty() ? "" : ", lost ", fault);
    }
    if (worse.edge.is_formed)
        sentence += fmt::format("; at the field's edge {:.0f} %", 100 * worse.kept(worse.edge));
    if (!report.budget.reaches)
        sentence += ". Told at the best focus, which the drawtube does not reach";
    return sentence + ".";
}

// 1 - J0(v)^2 - J1(v)^2, v = pi r / (wavelength N) (Lord Rayleigh, Phil. Mag. 11, 214, 1881, from memory).
double airy_energy(double radius, double airy_radius) {
    const double v = std::numbers::pi * airy_waves * radius / airy_radius;
    const double j0 = std::cyl_bessel_j(0.0, v);
    const double j1 = std::cyl_bessel_j(1.0, v);
    return 1 - j0 * j0 - j1 * j1;
}

}  // namespace

ImageRows image_quality_rows(const Report& report) {
    ImageRows rows;
    rows.sentence = sentence_of(report);
    if (report.figure_doubt && report.figure_doubt->matters())
        rows.sentence += " " + report.figure_doubt->sentence();
    const EyeImage& first = report.image_quality[0];
    rows.airy_radius = to_micrometres(first.airy_radius).value;
    const double reach = to_micrometres(first.axis.spread.half_width()).value;
    for (int i = 0; i < radius_count; ++i) {
        const double radius = reach * i / (radius_count - 1);
        rows.radii.push_back(radius);
        rows.perfect_energy.push_back(airy_energy(radius, rows.airy_radius));
    }
    for (std::size_t side = 0; side < 2; ++side) {
        const EyeImage& eye = report.image_quality[side];
        EyeImageRows& out = rows.eyes[side];
        out.eye = both_eyes[side];
        out.role = side == 0 ? ColourRole::left_arm : ColourRole::right_arm;
        const std::string name(title_of(out.eye));
        out.points = {point_rows(eye, eye.axis, name + ", on axis", rows.radii),
                      point_rows(eye, eye.edge, name + ", at the edge", rows.radii)};
    }
    return rows;
}

}  // namespace beamfork
