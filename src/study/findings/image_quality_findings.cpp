#include <algorithm>
#include <cmath>

#include "parts/newtonian.hpp"
#include "parts/shifter.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// 0.8: the limit at which a fault begins to be seen (A. Marechal's; a handbook's "Optical Systems", sec. 11.6.1-2,
// names Strehl 0.80 for a quarter wave). 0.95: our own choice for "nothing to be gained".
constexpr double soft_peak = 0.8;
constexpr double sharp_peak = 0.95;
constexpr double soft_edge_share = 0.7;  // of the axis's peak; our own choice

const EyeImage& worse_eye(const Report& report) {
    const auto& [left, right] = report.image_quality;
    constexpr double alike = 0.005;
    return right.axis.day_peak < left.axis.day_peak - alike ? right : left;
}

std::string fault_words(const EyeImage& eye, const PointImage& image) {
    switch (main_fault(image)) {
    case ImageFault::nothing: return "nothing much is lost";
    case ImageFault::colour:
        return fmt::format(
            "most is lost to colour: blue focuses {:.2f} mm and red {:.2f} mm away from green, "
            "where the depth of focus is {:.2f} mm",
            std::abs(eye.blue_shift), std::abs(eye.red_shift), eye.depth_of_focus);
    case ImageFault::spherical:
        return fmt::format("most is lost to spherical aberration of {:.2f} waves",
                           std::abs(image.aberrations.spherical));
    case ImageFault::coma:
        return fmt::format("most is lost to coma of {:.2f} waves", image.aberrations.coma);
    case ImageFault::astigmatism:
        return fmt::format("most is lost to astigmatism of {:.2f} waves",
                           image.aberrations.astigmatism);
    case ImageFault::other:
        return fmt::format("the wavefront is off by {:.2f} waves rms", image.rms_waves);
    }
    return "";
}

bool shifter_is_ahead_of_glass(const FindingScope& scope, const EyePath& path) {
    for (const PlacedSurface& surface : path.surfaces) {
        if (scope.setup.parts[surface.part].body.is<Shifter>()) return true;
        if (surface.kind == SurfaceKind::refraction) return false;
    }
    return true;
}

// What would give sharpness back, from what this train holds.
std::string cures(const FindingScope& scope, const EyeImage& eye) {
    std::string advice;
    double all = 0;
    const LightPath* largest = nullptr;
    for (const LightPath& path : scope.report.train.light_paths) {
        all += path.glass;
        if (role_of(scope.setup.parts[path.part]) != Role::chain || path.glass <= 10) continue;
        if (largest == nullptr || path.glass > largest->glass) largest = &path;
    }
    if (largest != nullptr) {
        advice += fmt::format("A mirror in place of “{}” takes {:.0f} of {:.0f} mm of glass away. ",
                              scope.name(largest->part), largest->glass, all);
    }
    if (!shifter_is_ahead_of_glass(scope, scope.report.train.path(eye.eye))) {
        advice += "A shifter ahead of the glass divides its spherical error by the fourth power of "
                  "the factor and its colour error by the square. ";
    }
    if (const auto& primary = scope.report.budget.primary; primary && primary->moved > 0) {
        advice += "Less light path behind this telescope brings its main mirror nearer to where "
                  "it was made to stand. ";
    }
    advice += "A slower telescope suffers less; a shifter made for that much glass cancels it.";
    return advice;
}

// What an unknown figure may have taken away, or not, is no reason for a verdict.
bool rests_on_unknown_figure(const FindingScope& scope, const EyeImage& eye) {
    const auto& doubt = scope.report.figure_doubt;
    const ImageFault fault = main_fault(eye.axis);
    return doubt && doubt->matters()
           && (fault == ImageFault::spherical || fault == ImageFault::other);
}

void axis_finding(const FindingScope& scope, const EyeImage& eye) {
    const double left = 100 * eye.axis.day_peak;
    if (eye.axis.day_peak >= sharp_peak) {
        scope.add(
            Severity::good, "image_sharp",
            fmt::format("Stars stay sharp: {:.0f} % of the perfect peak is left on axis.", left));
        return;
    }
    const bool is_soft = eye.axis.day_peak < soft_peak;
    const bool is_poor = is_soft && !rests_on_unknown_figure(scope, eye);
    scope.add(is_poor ? Severity::poor : Severity::note, is_soft ? "image_soft" : "image_fair",
              fmt::format("{}: {:.0f} % of the perfect peak is left on axis at f/{:.1f}; {}.",
                          is_soft ? "The light path costs sharpness"
                                  : "The light path costs a little sharpness",
                          left, eye.focal_ratio, fault_words(eye, eye.axis)),
              cures(scope, eye));
}

std::string coma_advice(const FindingScope& scope, const EyeImage& eye) {
    const bool is_mirrors =
        main_fault(eye.edge) == ImageFault::coma && find_part<Newtonian>(scope.setup) != nullptr;
    if (!is_mirrors || !scope.report.coma_corrections.empty()) return "";
    return "A coma corrector whose spacing suits what stands behind it takes the main mirror's "
           "coma away.";
}

void edge_finding(const FindingScope& scope, const EyeImage& eye) {
    if (!eye.edge.is_formed) return;
    const double lateral = eye.edge.lateral_colour();
    if (lateral > eye.airy_radius) {
        scope.add(Severity::note, "lateral_colour",
                  fmt::format("At the field's edge blue and red images lie {:.1f} µm apart, {:.1f} "
                              "Airy radii: stars "
                              "there are drawn out into short spectra.",
                              1000 * lateral, lateral / eye.airy_radius));
    }
    if (eye.edge.day_peak < soft_edge_share * eye.axis.day_peak) {
        scope.add(Severity::note, "edge_soft",
                  fmt::format("At the field's edge {:.0f} % of the perfect peak is left, of {:.0f} "
                              "% on axis; {}.",
                              100 * eye.edge.day_peak, 100 * eye.axis.day_peak,
                              fault_words(eye, eye.edge)),
                  coma_advice(scope, eye));
    }
}

}  // namespace

void image_quality_findings(const FindingScope& scope) {
    const EyeImage& eye = worse_eye(scope.report);
    if (!eye.axis.is_formed) return;
    axis_finding(scope, eye);
    edge_finding(scope, eye);
}

}  // namespace beamfork
