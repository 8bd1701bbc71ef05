// What `beamfork plan` says of a drawer, as text for people and as JSON for programs (assets/plan.schema.json describes
// the JSON), and a told train written as a setup.
#pragma once

#include <string>
#include <vector>

#include "app/commands/tasks.hpp"
#include "document/drawer_file.hpp"
#include "plan/purchases.hpp"
#include "plan/tonight.hpp"

namespace beamfork {

/// A file of that name, else a shipped drawer of that name. Errors name the nearest.
Result<ReadDrawer> open_drawer(const std::string& name);

struct PlannedDrawer {
    Plan plan;
    std::vector<BestForPurpose> best;
    std::vector<Purchase> purchases;
    std::vector<TonightsRow> tonight;  ///< where it was asked for
    /// The trains that are told, numbered from 1 through all purposes.
    [[nodiscard]] std::vector<const TriedTrain*> told() const;
    [[nodiscard]] bool serves() const { return !told().empty(); }
};

/// Errors: an unknown observer or purpose, a part that makes no train.
Result<PlannedDrawer> plan_drawer(const Drawer& drawer, const PlanDrawer& asked);

std::string plan_text(const PlannedDrawer& planned);
/// With every train, told or not, and its focus in every use, if wanted.
std::string plan_json(const PlannedDrawer& planned, bool every = false);

/// The told train of that number, from 1.
Result<void> save_train(const PlannedDrawer& planned, int number, const std::string& file);

}  // namespace beamfork
