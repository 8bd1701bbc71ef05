#include "app/check.hpp"

#include <cmath>

#include "study/cure_search.hpp"

namespace beamfork {

bool CheckedSetup::is_poor() const {
    return beamfork::is_poor(combinations.at(chosen).report.findings);
}

Result<CheckedSetup> check_setup(const Setup& setup, ClippingEffort effort) {
    CheckedSetup checked;
    checked.setup = setup;
    for (const std::size_t eyepiece : parts_with_role(setup, Role::eyepiece)) {
        for (const std::size_t observer : parts_with_role(setup, Role::observer)) {
            for (const std::size_t target : parts_with_role(setup, Role::target)) {
                const Choice choice{eyepiece, observer, target};
                auto report = make_report(setup, choice, effort);
                if (!report) return tl::make_unexpected(report.error());
                if (choice == setup.chosen) checked.chosen = checked.combinations.size();
                checked.combinations.push_back({choice, *std::move(report)});
            }
        }
    }
    add_cures(setup, checked.combinations.at(checked.chosen).report);
    return checked;
}

}  // namespace beamfork
