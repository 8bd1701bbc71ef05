#include "study/findings/report.hpp"

#include <algorithm>

#include "base/two_at_a_time.hpp"

namespace beamfork {

Millimetres Report::gap(Eye eye) const {
    const std::size_t side = side_of(eye);
    return Millimetres{train.paths[side].wanted_image} - image_behind_stop[side];
}

namespace {

// Of the ways to focus, which are many and looked at in fewer places, with fewer rays.
ClippingEffort light_of_ways(ClippingEffort effort) {
    return {std::clamp(effort.rays_per_point / 4, 48, 256), effort.form};
}

// How much of a report is made, and by whom.
struct Extent {
    ClippingEffort effort;
    bool is_trial = false;
    bool on_two_threads = false;
};

void study_eye(Report& report, const Setup& setup, std::size_t side, const Extent& extent) {
    const Eye eye = both_eyes[side];
    report.clipping[side] = clipping(report.train, eye, extent.effort);
    report.real_focus[side] = real_focus(report.train, eye);
    report.image_quality[side] =
        image_quality(setup, report.train, eye, {.with_spread = !extent.is_trial});
    report.image_behind_stop[side] = image_behind_stop(report.train, eye);
}

void study_eyes(Report& report, const Setup& setup, const Extent& extent) {
    if (extent.on_two_threads)
        return two_at_a_time(2, [&](std::size_t side) { study_eye(report, setup, side, extent); });
    for (std::size_t side = 0; side < 2; ++side)
        study_eye(report, setup, side, extent);
}

Result<Report>
report_with(const Setup& setup, const Choice& choice, const ReachTable& reach, Extent extent) {
    auto budget = focus_budget(setup, choice);
    if (!budget) return tl::make_unexpected(budget.error());
    auto train = focused_train(setup, choice, *budget);
    if (!train) return tl::make_unexpected(train.error());

    auto unsure = uncertainty(setup, choice, *budget);
    if (!unsure) return tl::make_unexpected(unsure.error());
    auto uses = other_uses(setup, choice, *budget);
    if (!uses) return tl::make_unexpected(uses.error());
    auto distance = distance_coupling(setup, choice);
    if (!distance) return tl::make_unexpected(distance.error());

    Report report;
    report.uncertainty = *std::move(unsure);
    report.other_uses = *std::move(uses);
    report.distance = *std::move(distance);
    report.reach = held_against(reach, choice.eyepiece);
    report.train = *std::move(train);
    report.budget = *std::move(budget);
    report.magnification = magnification(setup, choice, report.budget);
    report.orientation = orientation(report.train);
    report.coma_corrections = coma_corrections(setup, report.train.path(Eye::left));
    report.figure_doubt = figure_doubt(setup, report.train);
    report.fit = fit(setup, report.train, report.magnification);
    study_eyes(report, setup, extent);
    if (!extent.is_trial) {
        report.ways_to_focus =
            ways_to_focus(setup, choice, report.budget, light_of_ways(extent.effort));
    }
    const auto middle = [&](std::size_t side) {
        return report.clipping[side].points.front().relative;
    };
    report.brightness =
        brightness(setup, report.train, {middle(0), middle(1)}, report.magnification);
    report.alignment =
        alignment(setup, report.train, report.gap(Eye::left) - report.gap(Eye::right));
    report.findings = find_all(setup, report);
    return report;
}

}  // namespace

Result<Report> make_report(const Setup& setup, const Choice& choice, ClippingEffort effort) {
    const auto reach = reach_table(setup, choice);
    if (!reach) return tl::make_unexpected(reach.error());
    return report_with(setup, choice, *reach, {.effort = effort, .on_two_threads = true});
}

Result<Report> make_report(const Setup& setup,
                           const Choice& choice,
                           ClippingEffort effort,
                           const ReachTable& reach) {
    return report_with(setup, choice, reach, {.effort = effort});
}

Result<Report> make_trial(const Setup& setup, ClippingEffort effort) {
    const auto reach = reach_table(setup, setup.chosen);
    if (!reach) return tl::make_unexpected(reach.error());
    return report_with(setup, setup.chosen, *reach, {.effort = effort, .is_trial = true});
}

bool is_poor(const std::vector<Finding>& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.severity <= Severity::poor && !finding.is_of_sharpness;
    });
}

}  // namespace beamfork
