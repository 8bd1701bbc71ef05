// Every train that a drawer allows: each telescope with each of its focusers, each chain that the joints let stand before
// each head, each eyepiece pair that the head holds; judged for every observer and target.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "plan/chains.hpp"

namespace beamfork {

/// One train: indices into Plan::chains and DrawerParts::pairs.
struct PlannedTrain {
    std::uint32_t chain = 0;
    std::uint32_t place = 0;    ///< of the pair among those that its head holds
    std::uint64_t reached = 0;  ///< a bit for each use for which it reaches focus
    double margin =
        0;  ///< the smallest of all uses and of both ways, mm; negative: short by as much
    double factor = 1;  ///< of its lenses, for the first use
};

struct Plan {
    Drawer drawer;
    DrawerParts parts;
    std::vector<Chain> chains;
    std::vector<PlannedTrain> trains;  ///< by chain, then by pair

    [[nodiscard]] const Chain& chain_of(const PlannedTrain& train) const;
    [[nodiscard]] const Tube& tube_of(const PlannedTrain& train) const;
    [[nodiscard]] const Head& head_of(const PlannedTrain& train) const;
    [[nodiscard]] const Pair& pair_of(const PlannedTrain& train) const;
    [[nodiscard]] const Part& part(std::size_t index) const { return drawer.parts.at(index).part; }
    /// The bits of all uses, of those that look at the sky, and of the near ones.
    [[nodiscard]] std::uint64_t all_uses() const;
    [[nodiscard]] std::uint64_t sky_uses() const;
    [[nodiscard]] std::uint64_t near_uses() const { return all_uses() & ~sky_uses(); }
    /// Its focus for that use, worked out anew; nothing where the target is too near for the telescope.
    [[nodiscard]] std::optional<QuickFocus> focus(const PlannedTrain& train, std::size_t use) const;
    /// Indices into Drawer::parts in the order of the light: telescope, focuser, chain, head, pair.
    [[nodiscard]] std::vector<std::size_t> parts_of(const PlannedTrain& train) const;
    [[nodiscard]] bool has_part(const PlannedTrain& train, std::size_t part) const;
};

/// Which parts of the drawer may stand in a train.
struct PlanScope {
    std::vector<std::string> observers{};  ///< by name; empty: all
    bool with_wanted = false;
};

/// Two threads share the work; the result does not depend on that. Errors as measured_parts.
Result<Plan> plan_trains(Drawer drawer, const PlanScope& scope = {});

/// Of the owned parts and those, indices into Drawer::parts: the trains in which all of those stand.
Result<Plan>
plan_with(Drawer drawer, const PlanScope& scope, const std::vector<std::size_t>& parts);

/// Judges the trains of those chains; for benchmarks, which have made the chains before.
std::vector<PlannedTrain> judged_trains(const DrawerParts& parts, const std::vector<Chain>& chains);

}  // namespace beamfork
