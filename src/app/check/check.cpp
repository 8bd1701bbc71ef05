#include "app/check/check.hpp"

#include <optional>

#include "base/two_at_a_time.hpp"
#include "study/cures/cure_search.hpp"
#include "study/focus/combinations.hpp"

namespace beamfork {

bool CheckedSetup::is_poor() const {
    return beamfork::is_poor(combinations.at(chosen).report.findings);
}

namespace {

// The chosen one is told in full, and settled; of the others light is found by few rays.
std::vector<std::optional<Result<Report>>> reports_of(const Setup& setup,
                                                      const std::vector<Choice>& choices,
                                                      ClippingEffort effort,
                                                      const ReachTable& reach) {
    std::vector<std::optional<Result<Report>>> reports(choices.size());
    two_at_a_time(choices.size(), [&](std::size_t i) {
        const LightForm form = choices[i] == setup.chosen ? effort.form : LightForm::few_rays;
        reports[i] = make_report(setup, choices[i], {effort.rays_per_point, form}, reach);
    });
    return reports;
}

Result<CheckedSetup> check_every(const Setup& setup, ClippingEffort effort) {
    const auto reach = reach_table(setup, setup.chosen);
    if (!reach) return tl::make_unexpected(reach.error());
    CheckedSetup checked;
    checked.setup = setup;
    const std::vector<Choice> choices = combinations(setup, setup.chosen).studied;
    auto reports = reports_of(setup, choices, effort, *reach);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (!*reports[i]) return tl::make_unexpected(reports[i]->error());
        if (choices[i] == setup.chosen) checked.chosen = i;
        checked.combinations.push_back({choices[i], **std::move(reports[i])});
    }
    return checked;
}

Result<CheckedSetup> check_chosen(const Setup& setup, ClippingEffort effort) {
    auto report = make_report(setup, setup.chosen, effort);
    if (!report) return tl::make_unexpected(report.error());
    CheckedSetup checked;
    checked.setup = setup;
    checked.combinations.push_back({setup.chosen, *std::move(report)});
    return checked;
}

}  // namespace

Result<CheckedSetup> check_setup(const Setup& setup, CheckedPairs pairs, ClippingEffort effort) {
    auto checked =
        pairs == CheckedPairs::every ? check_every(setup, effort) : check_chosen(setup, effort);
    if (checked) add_cures(setup, checked->combinations.at(checked->chosen).report);
    return checked;
}

}  // namespace beamfork
