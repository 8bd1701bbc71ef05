#include "app/plan/plan_drawer.hpp"

#include <filesystem>

#include "base/assets.hpp"
#include "base/text.hpp"
#include "document/setup_file.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

Result<ReadDrawer> open_drawer(const std::string& name) {
    std::error_code ignored;
    if (std::filesystem::exists(name, ignored)) return load_drawer(name);
    constexpr std::string_view folder = "assets/drawers/";
    constexpr std::string_view ending = ".drawer.toml";
    std::vector<std::string> names;
    for (const std::string_view file : asset_names(folder)) {
        if (!file.ends_with(ending)) continue;
        names.emplace_back(file.substr(folder.size(), file.size() - folder.size() - ending.size()));
        if (names.back() == name) return read_drawer(*asset(file), std::string(file));
    }
    return fail(ErrorCode::not_found,
                fmt::format("no such file, and no shipped drawer of that name ({}){}",
                            fmt::join(names, ", "), did_you_mean(name, names)),
                {name, 0});
}

std::vector<const TriedTrain*> PlannedDrawer::told() const {
    std::vector<const TriedTrain*> all;
    for (const BestForPurpose& one : best) {
        for (const TriedTrain& train : one.trains)
            all.push_back(&train);
    }
    return all;
}

Result<PlannedDrawer> plan_drawer(const Drawer& drawer, const PlanDrawer& asked) {
    std::vector<Purpose> wanted;
    for (const std::string& key : asked.purposes) {
        const auto purpose = find_purpose(key);
        if (!purpose) return tl::make_unexpected(purpose.error());
        wanted.push_back(*purpose);
    }
    if (wanted.empty()) wanted.assign(purposes().begin(), purposes().end());
    const PlanScope scope{.observers = asked.observers};
    auto plan = plan_trains(drawer, scope);
    if (!plan) return tl::make_unexpected(plan.error());
    PlannedDrawer planned{.plan = *std::move(plan), .best = {}, .purchases = {}, .tonight = {}};
    planned.best = best_trains(planned.plan, wanted);
    if (asked.tonight) planned.tonight = tonights_rows(planned.plan);
    if (!asked.purchases || asked.save != 0) return planned;
    auto bought = purchases(planned.plan, planned.best, scope);
    if (!bought) return tl::make_unexpected(bought.error());
    planned.purchases = *std::move(bought);
    return planned;
}

Result<void> save_train(const PlannedDrawer& planned, int number, const std::string& file) {
    const auto told = planned.told();
    if (number < 1 || static_cast<std::size_t>(number) > told.size()) {
        return fail(ErrorCode::bad_input,
                    fmt::format("there is no train {}: {} are told", number, told.size()));
    }
    return save_file(file, told[static_cast<std::size_t>(number - 1)]->document);
}

}  // namespace beamfork
