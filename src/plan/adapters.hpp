// The shortest row of adapters between two ends: spacers of which each takes up the end before it.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "plan/drawer_parts.hpp"

namespace beamfork {

/// Indices into DrawerParts::chain.
using PartRow = std::vector<std::size_t>;

class Adapters {
public:
    /// Those of the parts that are spacers with both ends stated. `chain` must outlive it.
    explicit Adapters(std::span<const ChainPart> chain);

    /// Empty where the two ends fit as they are, or one of them is unstated; nothing where no row of the spacers that are not
    /// `taken` joins them. Shortest is the one of least length, of several such the one of fewest pieces, then the one
    /// whose pieces come first in the drawer.
    [[nodiscard]] std::optional<PartRow>
    between(Fitting rear, Fitting front, const PartRow& taken) const;

private:
    [[nodiscard]] std::optional<PartRow>
    shortest(Fitting rear, Fitting front, const PartRow& taken) const;

    std::span<const ChainPart> chain_;
    PartRow spacers_;
    std::vector<std::optional<PartRow>> known_;  ///< of every two ends, with nothing taken
};

}  // namespace beamfork
