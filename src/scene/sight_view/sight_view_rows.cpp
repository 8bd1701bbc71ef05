#include "scene/sight_view/sight_view_rows.hpp"

#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "study/findings/report.hpp"
#include "study/results/results.hpp"
#include "study/two_eyes/orientation.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double arcmin_per_radian = 60 * 180 / std::numbers::pi;

}  // namespace

std::string orientation_words(const EyeSight& sight) {
    return to_words(orientation_of(sight.stop_from_slope));
}

double misalignment_arcmin(const EyeSight& left, const EyeSight& right) {
    const glm::dvec2 apart = left.axis_image / left.eyepiece_focal_length.value
                             - right.axis_image / right.eyepiece_focal_length.value;
    return glm::length(apart) * arcmin_per_radian;
}

std::vector<std::string> picture_names(SightLayout layout) {
    switch (layout) {
    case SightLayout::left_and_right: return {"Left eye", "Right eye"};
    case SightLayout::merged: return {"Both eyes together"};
    case SightLayout::one_and_two: return {"One eye, bare telescope", "Both eyes, this train"};
    }
    return {};
}

SightRequest fitted(SightRequest request, const Sights& sights) {
    request.closer = fitting_closeness(sights, request.scene);
    return request;
}

std::vector<ValueRow> sight_view_rows(const Sights& sights, const SightRequest& request) {
    const EyeSight& left = sights[0];
    const EyeSight& right = sights[1];
    const double shown = frame_of(sights, request).shown;
    const auto both = [](const std::string& a, const std::string& b) {
        return a == b ? a : a + " | " + b;
    };
    std::vector<ValueRow> rows{
        {"Width as seen", format_number(to_degrees(Radians{shown}).value, 1), "°",
         "Angle under which the eye would see the width of one picture; the whole field is as wide "
         "as the eyepiece's stated apparent field."},
        {"Width on the sky", format_number(shown / left.magnification() * arcmin_per_radian, 1),
         "′",
         "The same width on the sky: the angle at the eye over the magnification, by chief rays "
         "traced through the train."},
        {"Image left | right", both(orientation_words(left), orientation_words(right)), "",
         "How the image stands, from chief rays traced from the right and from above."},
        {"Faintest star", format_number(left.limiting, 1), "mag",
         "6.0 for the naked eye (common practice, no source) plus 5 log10 of working aperture over "
         "eye pupil plus 2.5 log10 of this eye's share of light, as the division, all surfaces and "
         "the shadow of a secondary mirror with its vanes leave it (see Brightness)."},
        {"Without the head", format_number(sights[2].limiting, 1), "mag",
         "The same for one eye with this eyepiece at the telescope alone."},
        {"Brightness of a surface", format_number(100 * left.surface, 1), "%",
         "Against the naked eye: the share of light times the square of exit pupil over eye pupil. "
         "No telescope exceeds 100 %."},
        {"Left against right", format_number(misalignment_arcmin(left, right), 1), "′",
         "Angle at the eyes between the two images of one star in the middle, by traced rays: the "
         "distance of both places on the field stops over the eyepiece's focal length."}};
    return rows;
}

SightSummary sight_summary(const Report& report) {
    const FocusBudget& budget = report.budget;
    const auto told = [&](ResultId id) {
        const ResultInfo& result = info_of(id);
        return result.text(result.value(report));
    };
    return {budget.reaches,
            budget.reaches ? "in focus"
            : budget.shortfall == Millimetres{}
                ? "not both eyes in focus"
                : fmt::format("out of focus by {:.1f} mm", budget.shortfall.value),
            fmt::format("{}, field {}, exit pupil {}", told(ResultId::magnification),
                        told(ResultId::true_field), told(ResultId::exit_pupil))};
}

}  // namespace beamfork
