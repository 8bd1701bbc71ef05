#include "app/check.hpp"

#include <optional>

#include "study/cure_search.hpp"
#include "study/two_at_a_time.hpp"

namespace beamfork {

bool CheckedSetup::is_poor() const {
    return beamfork::is_poor(combinations.at(chosen).report.findings);
}

namespace {

std::vector<Choice> all_choices(const Setup& setup) {
    std::vector<Choice> choices;
    for (const std::size_t eyepiece : parts_with_role(setup, Role::eyepiece)) {
        for (const std::size_t observer : parts_with_role(setup, Role::observer)) {
            for (const std::size_t target : parts_with_role(setup, Role::target))
                choices.push_back({eyepiece, observer, target});
        }
    }
    return choices;
}

std::vector<std::optional<Result<Report>>> reports_of(const Setup& setup,
                                                      const std::vector<Choice>& choices,
                                                      ClippingEffort effort,
                                                      const ReachTable& reach) {
    std::vector<std::optional<Result<Report>>> reports(choices.size());
    two_at_a_time(choices.size(), [&](std::size_t i) {
        reports[i] = make_report(setup, choices[i], effort, reach);
    });
    return reports;
}

}  // namespace

Result<CheckedSetup> check_setup(const Setup& setup, ClippingEffort effort) {
    const auto reach = reach_table(setup, setup.chosen);
    if (!reach) return tl::make_unexpected(reach.error());
    CheckedSetup checked;
    checked.setup = setup;
    const std::vector<Choice> choices = all_choices(setup);
    auto reports = reports_of(setup, choices, effort, *reach);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (!*reports[i]) return tl::make_unexpected(reports[i]->error());
        if (choices[i] == setup.chosen) checked.chosen = i;
        checked.combinations.push_back({choices[i], **std::move(reports[i])});
    }
    add_cures(setup, checked.combinations.at(checked.chosen).report);
    return checked;
}

}  // namespace beamfork
