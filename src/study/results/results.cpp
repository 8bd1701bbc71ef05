#include "study/results/results.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/chance.hpp"
#include "base/text.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

namespace {

double count_of(const Report& report, Severity severity) {
    return static_cast<double>(
        std::count_if(report.findings.begin(), report.findings.end(),
                      [&](const Finding& finding) { return finding.severity == severity; }));
}

double reaching_percent(const ReachTable& reach) {
    const auto all = static_cast<double>(std::max<std::size_t>(1, reach.entries.size()));
    return 100 * static_cast<double>(reach.usable()) / all;
}

// Above 1 the glass undoes some of the eye's own colour: no more than all of the sharpness is kept.
double kept_percent(const Report& report, std::size_t side, PointImage EyeImage::*place) {
    const EyeImage& image = report.image_quality[side];
    return 100 * std::min(1.0, image.kept(image.*place));
}

constexpr std::array results{
    ResultInfo{.id = ResultId::failures,
               .key = "failures",
               .label = "Findings that fail",
               .in_words = "findings that fail",
               .help = "How many findings say that something fails.",
               .decimals = 0,
               .fine_decimals = 0,
               .better = Better::less,
               .notable = 0.5,
               .of_both = [](const Report& report) { return count_of(report, Severity::fails); }},
    ResultInfo{.id = ResultId::poor,
               .key = "poor",
               .label = "Findings that are poor",
               .in_words = "findings that are poor",
               .help = "How many findings say that something is poor.",
               .decimals = 0,
               .fine_decimals = 0,
               .better = Better::less,
               .notable = 0.5,
               .of_both = [](const Report& report) { return count_of(report, Severity::poor); }},
    ResultInfo{.id = ResultId::focus_margin,
               .key = "focus_margin",
               .label = "Focus margin",
               .in_words = "focus margin",
               .help = "Travel left between focus and the nearer end of the drawtube; negative is "
                       "the shortfall. From the focus budget: back focus less every part's light "
                       "path.",
               .unit = FieldUnit::millimetre,
               .better = Better::enough,
               .notable = 0.05,
               .of_both =
                   [](const Report& report) {
                       return std::min(report.budget.margin_in, report.budget.margin_out).value;
                   }},
    ResultInfo{
        .id = ResultId::focus_chance,
        .key = "focus_chance",
        .label = "Chance of focus",
        .in_words = "chance of focus",
        .help = "That focus is reached when every ± is considered, stated or assumed.",
        .unit = FieldUnit::percent,
        .decimals = 0,
        .better = Better::more,
        .notable = 0.5,
        .of_both = [](const Report& report) { return 100 * report.uncertainty.probability; }},
    ResultInfo{.id = ResultId::combinations,
               .key = "combinations",
               .label = "Combinations in focus",
               .in_words = "combinations in focus",
               .help = "Share of all combinations of eyepieces, observer and target that reach "
                       "focus.",
               .unit = FieldUnit::percent,
               .decimals = 0,
               .better = Better::more,
               .notable = 0.5,
               .of_both = [](const Report& report) { return reaching_percent(report.reach); }},
    ResultInfo{
        .id = ResultId::edge_light,
        .key = "edge_light",
        .label = "Light at the field's edge",
        .short_label = "Edge",
        .in_words = "edge light",
        .help = "Share of the objective's light that arrives at the edge of the field stop, "
                "by traced rays; the mean over all directions. Below about 50 % it is "
                "noticed (common practice, no source).",
        .unit = FieldUnit::percent,
        .decimals = 0,
        .better = Better::more,
        .notable = 1,
        .of_eye = [](const Report& report,
                     std::size_t side) { return 100 * report.clipping[side].edge_relative; }},
    ResultInfo{.id = ResultId::fully_lit,
               .key = "fully_lit",
               .label = "Fully lit diameter",
               .short_label = "Fully lit",
               .in_words = "fully lit",
               .help = "Diameter of the middle of the field that gets all of the objective's "
                       "light, by rays along the pupil's rim.",
               .unit = FieldUnit::millimetre,
               .fine_decimals = 2,
               .better = Better::more,
               .of_eye =
                   [](const Report& report, std::size_t side) {
                       return report.clipping[side].fully_illuminated_diameter.value;
                   }},
    ResultInfo{
        .id = ResultId::working_aperture,
        .key = "working_aperture",
        .label = "Working aperture",
        .in_words = "working aperture",
        .help = "Diameter of a whole aperture that would gather as much light for the "
                "middle of the field: aperture times the square root of the share that "
                "arrives, by traced rays.",
        .unit = FieldUnit::millimetre,
        .decimals = 0,
        .better = Better::more,
        .notable = 0.5,
        .of_eye = [](const Report& report,
                     std::size_t side) { return report.clipping[side].working_aperture.value; }},
    ResultInfo{
        .id = ResultId::throughput,
        .key = "throughput",
        .label = "Light that enters the darker eye",
        .short_label = "Enters the eye",
        .in_words = "light to the darker eye",
        .help = "Of the light on the whole aperture: throughput, times what no opening "
                "stops on axis, times what the secondary mirror and its vanes leave free, "
                "times what the eye's own pupil takes in.",
        .unit = FieldUnit::percent,
        .fine_decimals = 2,
        .better = Better::more,
        .notable = 0.1,
        .of_eye = [](const Report& report,
                     std::size_t side) { return 100 * report.brightness.eyes[side].total(); }},
    ResultInfo{
        .id = ResultId::sharpness,
        .key = "sharpness",
        .label = "Sharpness kept on axis",
        .in_words = "sharpness kept",
        .help = "Height of a star's peak in white light, through this eye, over what the same "
                "telescope and magnification have without head and glass; at most all of it.",
        .unit = FieldUnit::percent,
        .decimals = 0,
        .better = Better::more,
        .notable = 1,
        .of_eye = [](const Report& report,
                     std::size_t side) { return kept_percent(report, side, &EyeImage::axis); }},
    ResultInfo{
        .id = ResultId::edge_sharpness,
        .key = "edge_sharpness",
        .label = "Sharpness kept at the edge",
        .in_words = "sharpness kept at the edge",
        .help = "The same as on axis, at the edge of the field, where green light is worst of four "
                "places.",
        .unit = FieldUnit::percent,
        .decimals = 0,
        .better = Better::more,
        .notable = 1,
        .of_eye = [](const Report& report,
                     std::size_t side) { return kept_percent(report, side, &EyeImage::edge); }},
    ResultInfo{.id = ResultId::magnification,
               .key = "magnification",
               .label = "Magnification",
               .in_words = "magnification",
               .help = "Effective focal length divided by the eyepiece's focal length (W. J. "
                       "Smith, Modern Optical Engineering, 4th ed., sec. 13.1).",
               .unit = FieldUnit::times,
               .decimals = 0,
               .notable = 0.5,
               .of_both = [](const Report& report) { return report.magnification.magnification; }},
    ResultInfo{
        .id = ResultId::true_field,
        .key = "true_field",
        .label = "True field",
        .in_words = "true field",
        .help = "Width of sky that is seen: twice the arc tangent of half the field stop "
                "over the effective focal length.",
        .unit = FieldUnit::degree,
        .decimals = 2,
        .fine_decimals = 3,
        .notable = 0.005,
        .of_both = [](const Report& report) { return report.magnification.true_field.value; }},
    ResultInfo{
        .id = ResultId::exit_pupil,
        .key = "exit_pupil",
        .label = "Exit pupil",
        .in_words = "exit pupil",
        .help = "Aperture divided by magnification: the width of the beam that enters each "
                "eye (W. J. Smith, Modern Optical Engineering, 4th ed., Eq. 13.5).",
        .unit = FieldUnit::millimetre,
        .decimals = 2,
        .fine_decimals = 2,
        .notable = 0.005,
        .of_both = [](const Report& report) { return report.magnification.exit_pupil.value; }},
    ResultInfo{.id = ResultId::shifter_factor,
               .key = "shifter_factor",
               .label = "Shifter's real factor",
               .short_label = "Shifter factor",
               .in_words = "shifter factor",
               .help = "What shifters and correctors really do at their real distance from the "
                       "image, whatever the label says: 1 − d/f each, d from the lens to the "
                       "image, f its focal length, negative for a lens that spreads light "
                       "(thin-lens equation).",
               .unit = FieldUnit::times,
               .decimals = 2,
               .fine_decimals = 3,
               .of_both = [](const Report& report) { return report.magnification.shifter_factor; }},
    ResultInfo{
        .id = ResultId::effective_focal_length,
        .key = "effective_focal_length",
        .label = "Effective focal length",
        .in_words = "effective focal length",
        .help = "The telescope's focal length at this focus times the real factor of the "
                "lenses behind it.",
        .unit = FieldUnit::millimetre,
        .decimals = 0,
        .of_both =
            [](const Report& report) { return report.magnification.effective_focal_length.value; }},
    ResultInfo{.id = ResultId::focal_ratio,
               .key = "focal_ratio",
               .label = "Focal ratio",
               .in_words = "focal ratio",
               .help = "Effective focal length divided by aperture: how slim the cone is that "
                       "arrives at the field stop.",
               .before = "f/",
               .fine_decimals = 2,
               .of_both = [](const Report& report) { return report.magnification.focal_ratio; }},
    ResultInfo{.id = ResultId::load,
               .key = "load",
               .label = "Load on the focuser",
               .short_label = "On the focuser",
               .in_words = "load on the focuser",
               .help = "Sum of the stated masses of all parts behind the drawtube, two eyepieces "
                       "included.",
               .unit = FieldUnit::gram,
               .decimals = 0,
               .better = Better::less,
               .notable = 0.5,
               .of_both = [](const Report& report) { return report.fit.load.mass.value; }},
    ResultInfo{
        .id = ResultId::height_apart,
        .key = "height_apart",
        .label = "Images apart in height",
        .in_words = "images apart in height",
        .help = "How much higher one eye's image stands than the other's, as seen behind "
                "the eyepieces.",
        .unit = FieldUnit::arcminute,
        .better = Better::less,
        .notable = 0.05,
        .of_both = [](const Report& report) { return abs(report.alignment.seen.left_up).value; }},
};

constexpr bool stand_in_order() {
    for (std::size_t i = 0; i < results.size(); ++i) {
        const ResultInfo& one = results.at(i);
        if (static_cast<std::size_t>(one.id) != i) return false;
        if ((one.of_both == nullptr) == (one.of_eye == nullptr)) return false;
    }
    return true;
}
static_assert(stand_in_order(), "each entry stands where its id counts, with one way to read it");

std::string_view unit_in_key(FieldUnit unit) {
    switch (unit) {
    case FieldUnit::millimetre: return "_mm";
    case FieldUnit::degree: return "_deg";
    case FieldUnit::dioptre: return "_dioptres";
    case FieldUnit::metre: return "_m";
    case FieldUnit::percent: return "_percent";
    case FieldUnit::arcminute: return "_arcmin";
    case FieldUnit::gram: return "_g";
    case FieldUnit::none:
    case FieldUnit::times: return "";
    }
    return "";
}

}  // namespace

std::span<const ResultInfo> all_results() { return results; }

const ResultInfo& info_of(ResultId id) { return results.at(static_cast<std::size_t>(id)); }

std::string_view ResultInfo::short_name() const {
    return short_label.empty() ? label : short_label;
}

double ResultInfo::value(const Report& report) const {
    return of_both != nullptr ? of_both(report) : std::min(of_eye(report, 0), of_eye(report, 1));
}

std::string ResultInfo::key_with_unit() const {
    return std::string(key) + std::string(unit_in_key(unit));
}

std::string ResultInfo::number(double value) const {
    return id == ResultId::focus_chance ? short_chance(value / 100)
                                        : format_number(value, decimals);
}

std::string ResultInfo::text(double value) const {
    return std::string(before) + with_symbol(number(value), unit);
}

std::string_view better_in_words(const ResultInfo& result) {
    switch (result.better) {
    case Better::more: return "More is better.";
    case Better::less:
        return result.unit == FieldUnit::none ? "Fewer are better." : "Less is better.";
    case Better::enough: return "More is better up to 5 mm, which is enough.";
    case Better::matter_of_taste: return "";
    }
    return "";
}

}  // namespace beamfork
