#include <algorithm>
#include <cmath>

#include "parts/newtonian.hpp"
#include "parts/shifter.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double soft_edge_share = 0.7;  // of the axis's seen peak; our own choice

const EyeImage& worse_eye(const Report& report) {
    const auto& [left, right] = report.image_quality;
    constexpr double alike = 0.005;
    if (left.axis.is_formed != right.axis.is_formed) return left.axis.is_formed ? left : right;
    return right.kept(right.axis) < left.kept(left.axis) - alike ? right : left;
}

std::string fault_words(const EyeImage& eye, const PointImage& image) {
    switch (main_fault(eye, image)) {
    case ImageFault::nothing: return "nothing much is lost";
    case ImageFault::colour:
        return fmt::format(
            "most is lost to colour: blue focuses {:.2f} mm and red {:.2f} mm away from green, "
            "where the depth of focus is {:.2f} mm",
            std::abs(eye.blue_shift.value), std::abs(eye.red_shift.value),
            eye.depth_of_focus.value);
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
    if (const auto& primary = scope.report.budget.primary;
        primary && primary->moved > Millimetres{}) {
        advice += "Less light path behind this telescope brings its main mirror nearer to where "
                  "it was made to stand. ";
    }
    advice += "A slower telescope suffers less; a shifter made for that much glass cancels it.";
    return advice;
}

// "61 % as sharp as without head and glass, through the eye at 0.9 mm of exit pupil"
std::string kept_words(const EyeImage& eye) {
    return fmt::format("{:.0f} % of the sharpness is kept that the same magnification has without "
                       "head and glass, through this eye at {:.1f} mm of exit pupil",
                       100 * eye.kept(eye.axis), eye.pupil.value);
}

void sharp_finding(const FindingScope& scope, const EyeImage& eye) {
    const double kept = eye.kept(eye.axis);
    std::string sentence = "Stars stay sharp: ";
    if (kept > 1.02) {
        sentence +=
            fmt::format("at {:.1f} mm of exit pupil the glass even undoes some of the eye's "
                        "own colour.",
                        eye.pupil.value);
    } else if (kept >= kept_well) {
        sentence += kept_words(eye) + ".";
    } else {
        sentence += fmt::format("what blur there is, {:.1f}′, is less than an eye resolves.",
                                eye.axis.blur.value);
    }
    scope.add(Severity::good, "image_sharp", sentence);
}

void hidden_finding(const FindingScope& scope, const EyeImage& eye) {
    std::string sentence = "The light path costs sharpness that so wide an exit pupil hides: "
                           + kept_words(eye) + "; " + fault_words(eye, eye.axis);
    if (eye.shows_from) {
        sentence += fmt::format(". It will be seen from about {:.0f}× on",
                                *eye.shows_from * scope.report.magnification.magnification);
    }
    scope.add(Severity::note, "image_soft_later", sentence + ".");
}

// What an unknown figure may have taken away, or not, is no reason for a verdict.
bool rests_on_unknown_figure(const FindingScope& scope, const EyeImage& eye) {
    const auto& doubt = scope.report.figure_doubt;
    const ImageFault fault = main_fault(eye, eye.axis);
    return doubt && doubt->matters()
           && (fault == ImageFault::spherical || fault == ImageFault::other);
}

void axis_finding(const FindingScope& scope, const EyeImage& eye) {
    switch (sharpness_of(eye, eye.axis)) {
    case Sharpness::good: return sharp_finding(scope, eye);
    case Sharpness::hidden: hidden_finding(scope, eye); break;
    case Sharpness::fair:
        scope.add(Severity::note, "image_fair",
                  fmt::format("The light path costs a little sharpness: {}; {}.", kept_words(eye),
                              fault_words(eye, eye.axis)));
        break;
    case Sharpness::soft:
        scope.add(rests_on_unknown_figure(scope, eye) ? Severity::note : Severity::poor,
                  "image_soft",
                  fmt::format("The light path costs sharpness: {}; {}.", kept_words(eye),
                              fault_words(eye, eye.axis)),
                  cures(scope, eye));
        break;
    }
    scope.found.back().is_of_sharpness = true;
}

std::string coma_advice(const FindingScope& scope, const EyeImage& eye) {
    const bool is_mirrors = main_fault(eye, eye.edge) == ImageFault::coma
                            && find_part<Newtonian>(scope.setup) != nullptr;
    if (!is_mirrors || !scope.report.coma_corrections.empty()) return "";
    return "A coma corrector whose spacing suits what stands behind it takes the main mirror's "
           "coma away.";
}

void edge_finding(const FindingScope& scope, const EyeImage& eye) {
    const PointImage& edge = eye.edge;
    if (!edge.is_formed) return;
    if (edge.colour_seen >= seen_at_all) {
        scope.add(Severity::note, "lateral_colour",
                  fmt::format("At the field's edge blue and red images stand {:.1f}′ apart at the "
                              "eye: stars there are drawn out into short spectra.",
                              edge.colour_seen.value));
        scope.found.back().is_of_sharpness = true;
    }
    if (edge.seen_peak < soft_edge_share * eye.axis.seen_peak && edge.blur >= seen_at_all) {
        scope.add(Severity::note, "edge_soft",
                  fmt::format("At the field's edge stars are less sharp than in the middle: {:.0f} "
                              "% of the sharpness is kept, and they are {:.1f}′ wide at the eye; "
                              "{}.",
                              100 * eye.kept(edge), edge.blur.value, fault_words(eye, edge)),
                  coma_advice(scope, eye));
        scope.found.back().is_of_sharpness = true;
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
