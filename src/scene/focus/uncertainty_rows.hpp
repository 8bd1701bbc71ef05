// How sure focus is, ready to draw: the chance as one number, where focus may lie against the drawtube's travel,
// and what each uncertain value contributes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/kit/colours.hpp"
#include "scene/kit/value_row.hpp"

namespace beamfork {

struct Report;
struct Setup;

struct ContributionRow {
    std::size_t part = 0;
    std::string label;  ///< "Club refractor: Back focus"
    std::string value;  ///< "±2 mm, guessed", "±1 mm assumed, datasheet"
    bool is_assumed = false;
    double share = 0;  ///< of the variance, 0 to 1
    std::string percent;
    std::string help;
};

struct UncertaintyRows {
    bool is_stated = false;  ///< something has a +-; without it there is only `sentence`
    std::string headline;    ///< "92 % sure"
    ColourRole role = ColourRole::good;
    std::string sentence;
    std::string assumed;  ///< how many +- nobody stated, and what they are then
    std::string advice;   ///< which value to measure, and how
    std::string help;     ///< formula and source of the chance
    double low = 0;       ///< the drawtube positions of `density`, mm
    double high = 1;
    double travel = 0;
    double drawtube = 0;  ///< as stated
    std::vector<double>
        density;  ///< how likely focus is there, evenly from low to high; its peak is 1
    std::vector<ContributionRow> contributions;
};

UncertaintyRows uncertainty_rows(const Setup& setup, const Report& report);

/// Whether it reaches, and how the focus moves.
struct OtherUseRow : ValueRow {
    ColourRole role = ColourRole::good;
};
/// The same parts used otherwise: what is taken out, and where focus is then.
std::vector<OtherUseRow> other_uses_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
