#include "plan/plan.hpp"

#include <algorithm>
#include <limits>

#include "base/two_at_a_time.hpp"

namespace beamfork {

const Chain& Plan::chain_of(const PlannedTrain& train) const { return chains.at(train.chain); }
const Tube& Plan::tube_of(const PlannedTrain& train) const {
    return parts.tubes.at(chain_of(train).tube);
}
const Head& Plan::head_of(const PlannedTrain& train) const {
    return parts.heads.at(chain_of(train).head);
}
const Pair& Plan::pair_of(const PlannedTrain& train) const {
    return parts.pairs.at(head_of(train).pairs.at(train.place));
}

namespace {

std::uint64_t bit(std::size_t use) { return std::uint64_t{1} << use; }

}  // namespace

std::uint64_t Plan::all_uses() const {
    std::uint64_t bits = 0;
    for (std::size_t use = 0; use < parts.uses.size(); ++use)
        bits |= bit(use);
    return bits;
}

std::uint64_t Plan::sky_uses() const {
    std::uint64_t bits = 0;
    for (std::size_t use = 0; use < parts.uses.size(); ++use)
        bits |= parts.uses[use].is_near ? 0 : bit(use);
    return bits;
}

std::optional<QuickFocus> Plan::focus(const PlannedTrain& train, std::size_t use) const {
    const TubeFocus tube(tube_of(train));
    if (!tube.can_see(use)) return std::nullopt;
    const Head& head = head_of(train);
    return tube.focus(chain_of(train).axis, head.endings.at(train.place).at(use), head.seat_travel,
                      use);
}

std::vector<std::size_t> Plan::parts_of(const PlannedTrain& train) const {
    const Tube& tube = tube_of(train);
    std::vector<std::size_t> all{tube.telescope, tube.focuser};
    for (const std::size_t one : chain_of(train).parts)
        all.push_back(parts.chain[one].part);
    all.push_back(head_of(train).part);
    all.push_back(pair_of(train).part);
    return all;
}

bool Plan::has_part(const PlannedTrain& train, std::size_t part) const {
    const auto all = parts_of(train);
    return std::find(all.begin(), all.end(), part) != all.end();
}

namespace {

// All pairs that the chain's head holds.
void judge_chain(const DrawerParts& parts,
                 const std::vector<TubeFocus>& tubes,
                 const Chain& chain,
                 std::span<PlannedTrain> trains) {
    const TubeFocus& tube = tubes[chain.tube];
    const Head& head = parts.heads[chain.head];
    for (std::size_t place = 0; place < trains.size(); ++place) {
        PlannedTrain& train = trains[place];
        train.place = static_cast<std::uint32_t>(place);
        train.margin = std::numeric_limits<double>::infinity();
        for (std::size_t use = 0; use < parts.uses.size(); ++use) {
            if (!tube.can_see(use)) {
                train.margin = -std::numeric_limits<double>::infinity();
                continue;
            }
            const QuickFocus focus =
                tube.focus(chain.axis, head.endings[place][use], head.seat_travel, use);
            if (use == 0) train.factor = focus.factor;
            if (focus.reaches) train.reached |= bit(use);
            train.margin = std::min(train.margin, focus.margin());
        }
    }
}

Result<Plan>
plan_of(Drawer drawer, const PlanScope& scope, const std::vector<std::size_t>& beside) {
    std::vector<bool> may_use;
    for (const DrawerPart& held : drawer.parts)
        may_use.push_back(!held.wanted || scope.with_wanted);
    for (const std::size_t part : beside)
        may_use.at(part) = true;
    Plan plan;
    auto parts = measured_parts(drawer, may_use, scope.observers);
    if (!parts) return tl::make_unexpected(parts.error());
    plan.parts = *std::move(parts);
    plan.drawer = std::move(drawer);
    const Adapters adapters(plan.parts.chain);
    const std::size_t heads = plan.parts.heads.size();
    std::vector<std::vector<Chain>> chains(plan.parts.tubes.size() * heads);
    two_at_a_time(chains.size(), [&](std::size_t i) {
        chains[i] = chains_between(plan.parts, adapters, i / heads, i % heads);
    });
    for (auto& some : chains)
        std::move(some.begin(), some.end(), std::back_inserter(plan.chains));
    plan.trains = judged_trains(plan.parts, plan.chains);
    return plan;
}

}  // namespace

std::vector<PlannedTrain> judged_trains(const DrawerParts& parts,
                                        const std::vector<Chain>& chains) {
    std::vector<TubeFocus> tubes;
    for (const Tube& tube : parts.tubes)
        tubes.emplace_back(tube);
    std::vector<std::size_t> first{0};
    for (const Chain& chain : chains)
        first.push_back(first.back() + parts.heads[chain.head].pairs.size());
    std::vector<PlannedTrain> trains(first.back());
    constexpr std::size_t at_once = 256;
    two_at_a_time((chains.size() + at_once - 1) / at_once, [&](std::size_t block) {
        const std::size_t end = std::min(chains.size(), (block + 1) * at_once);
        for (std::size_t i = block * at_once; i < end; ++i) {
            const std::span<PlannedTrain> here(trains.data() + first[i], first[i + 1] - first[i]);
            for (PlannedTrain& train : here)
                train.chain = static_cast<std::uint32_t>(i);
            judge_chain(parts, tubes, chains[i], here);
        }
    });
    return trains;
}

Result<Plan> plan_trains(Drawer drawer, const PlanScope& scope) {
    return plan_of(std::move(drawer), scope, {});
}

Result<Plan>
plan_with(Drawer drawer, const PlanScope& scope, const std::vector<std::size_t>& parts) {
    auto plan = plan_of(std::move(drawer), scope, parts);
    if (!plan) return plan;
    std::erase_if(plan->trains, [&](const PlannedTrain& train) {
        return std::any_of(parts.begin(), parts.end(),
                           [&](std::size_t part) { return !plan->has_part(train, part); });
    });
    return plan;
}

}  // namespace beamfork
