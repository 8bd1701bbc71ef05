#include "study/comparison/comparison.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace beamfork {

namespace {

enum class Wish { more, less, enough, neither };

struct ReportResult {
    std::string_view key;
    std::string_view label;
    std::string_view help;
    FieldUnit unit;
    int decimals;
    double notable;  ///< smaller differences are not told
    Wish wish;
    double (*value)(const Report& report);
};

template <class OfEye>
double worse_eye(const OfEye& of_eye) {
    return std::min(of_eye(0), of_eye(1));
}

double count_of(const Report& report, Severity severity) {
    return static_cast<double>(
        std::count_if(report.findings.begin(), report.findings.end(),
                      [&](const Finding& finding) { return finding.severity == severity; }));
}

constexpr std::array compared_results{
    ReportResult{"failures", "Findings that fail",
                 "How many findings say that something fails; fewer are better.", FieldUnit::none,
                 0, 0.5, Wish::less,
                 [](const Report& report) { return count_of(report, Severity::fails); }},
    ReportResult{"poor", "Findings that are poor",
                 "How many findings say that something is poor; fewer are better.", FieldUnit::none,
                 0, 0.5, Wish::less,
                 [](const Report& report) { return count_of(report, Severity::poor); }},
    ReportResult{
        "focus_margin", "Focus margin",
        "Travel left between focus and the nearer end of the drawtube, from the focus budget; "
        "negative is the shortfall. More is better up to 5 mm, which is enough.",
        FieldUnit::millimetre, 1, 0.05, Wish::enough,
        [](const Report& report) {
            return std::min(report.budget.margin_in, report.budget.margin_out);
        }},
    ReportResult{
        "focus_chance", "Chance of focus",
        "That focus is reached when every ± is considered, stated or assumed; more is better.",
        FieldUnit::percent, 0, 0.5, Wish::more,
        [](const Report& report) { return 100 * report.uncertainty.probability; }},
    ReportResult{
        "combinations", "Combinations in focus",
        "Share of all combinations of eyepieces, observer and target that reach focus; more is "
        "better.",
        FieldUnit::percent, 0, 0.5, Wish::more,
        [](const Report& report) {
            const double all =
                static_cast<double>(std::max<std::size_t>(1, report.reach.entries.size()));
            return 100 * static_cast<double>(report.reach.reaching()) / all;
        }},
    ReportResult{
        "edge_light", "Light at the field's edge",
        "Share of the telescope's light that arrives at the rim of the field stop, by traced rays; "
        "more is better.",
        FieldUnit::percent, 0, 1, Wish::more,
        [](const Report& report) {
            return worse_eye(
                [&](std::size_t eye) { return 100 * report.clipping[eye].edge_relative; });
        }},
    ReportResult{
        "working_aperture", "Working aperture",
        "Aperture that gathers as much light on axis as gets through all openings, by traced rays; "
        "more is better.",
        FieldUnit::millimetre, 0, 0.5, Wish::more,
        [](const Report& report) {
            return worse_eye(
                [&](std::size_t eye) { return report.clipping[eye].working_aperture; });
        }},
    ReportResult{
        "throughput", "Light that enters the darker eye",
        "Share of the light that meets the aperture and enters the eye's pupil; more is better.",
        FieldUnit::percent, 1, 0.1, Wish::more,
        [](const Report& report) {
            return worse_eye(
                [&](std::size_t eye) { return 100 * report.brightness.eyes[eye].total(); });
        }},
    ReportResult{
        "sharpness", "Sharpness kept on axis",
        "Height of a star's peak in white light, through this eye, over what the same telescope "
        "and magnification have without head and glass; more is better, up to all of it.",
        FieldUnit::percent, 0, 1, Wish::more,
        [](const Report& report) {
            return worse_eye([&](std::size_t eye) {
                const EyeImage& image = report.image_quality[eye];
                return 100 * std::min(1.0, image.kept(image.axis));
            });
        }},
    ReportResult{
        "edge_sharpness", "Sharpness kept at the edge",
        "The same at the edge of the field, where green light is worst of four places; more is "
        "better.",
        FieldUnit::percent, 0, 1, Wish::more,
        [](const Report& report) {
            return worse_eye([&](std::size_t eye) {
                const EyeImage& image = report.image_quality[eye];
                return 100 * std::min(1.0, image.kept(image.edge));
            });
        }},
    ReportResult{"magnification", "Magnification",
                 "Effective focal length over the eyepiece's focal length; a matter of taste.",
                 FieldUnit::times, 0, 0.5, Wish::neither,
                 [](const Report& report) { return report.magnification.magnification; }},
    ReportResult{
        "true_field", "True field",
        "How wide a piece of sky is seen: 2 atan(field stop / (2 effective focal length)).",
        FieldUnit::degree, 2, 0.005, Wish::neither,
        [](const Report& report) { return report.magnification.true_field.value; }},
    ReportResult{"exit_pupil", "Exit pupil",
                 "Width of the light that leaves each eyepiece: aperture over magnification.",
                 FieldUnit::millimetre, 2, 0.005, Wish::neither,
                 [](const Report& report) { return report.magnification.exit_pupil; }},
    ReportResult{"load", "Load on the focuser",
                 "Mass of all parts behind the drawtube, where it is stated; less is better.",
                 FieldUnit::gram, 0, 0.5, Wish::less,
                 [](const Report& report) { return report.fit.load.mass; }},
    ReportResult{
        "height_apart", "Images apart in height",
        "How much higher one eye's image stands than the other's, as seen behind the eyepieces; "
        "less is better.",
        FieldUnit::arcminute, 1, 0.05, Wish::less,
        [](const Report& report) { return std::abs(report.alignment.seen.left_up); }},
};

std::optional<Side> better_of(const ReportResult& result, double here, double there) {
    if (result.wish == Wish::neither) return std::nullopt;
    if (result.wish == Wish::enough && here >= thin_margin_mm && there >= thin_margin_mm)
        return std::nullopt;
    return (here > there) == (result.wish != Wish::less) ? Side::here : Side::there;
}

}  // namespace

std::vector<ComparedResult> compare_reports(const Report& here, const Report& there) {
    std::vector<ComparedResult> compared;
    for (const ReportResult& result : compared_results) {
        ComparedResult one{result.key,      result.label,       result.help,        result.unit,
                           result.decimals, result.value(here), result.value(there)};
        one.differs = std::abs(one.here - one.there) >= result.notable;
        if (one.differs) one.better = better_of(result, one.here, one.there);
        compared.push_back(one);
    }
    return compared;
}

}  // namespace beamfork
