// Two setups side by side: every result that an observer cares for, of both, and which of the two is better.
#pragma once

#include <optional>
#include <vector>

namespace beamfork {

struct Report;
struct ResultInfo;

enum class Side { here, there };

/// One result of both setups. Of both eyes, the worse one counts.
struct ComparedResult {
    const ResultInfo* info = nullptr;  ///< never null
    double here = 0;
    double there = 0;
    bool differs = false;          ///< by more than the counting of rays makes
    std::optional<Side> better{};  ///< nothing: as good as each other, or a matter of taste
};

/// In the order in which they are told. Findings count with their severity; cures are left out.
std::vector<ComparedResult> compare_reports(const Report& here, const Report& there);

/// What is extended, sky and nebulae alike: how bright each shows it in one eye, against the naked eye, and by how many
/// magnitudes the other shows it dimmer (negative: brighter), 2.5 log10 of the ratio.
struct ExtendedLight {
    double here = 0;
    double there = 0;
    double dimmer_there = 0;
};
/// Nothing where no light arrives.
std::optional<ExtendedLight> extended_light(const Report& here, const Report& there);

}  // namespace beamfork
