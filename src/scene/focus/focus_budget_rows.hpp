// The focus budget as a waterfall of bars and the drawtube's travel as a scale, ready to draw. Reduced
// (air-equivalent) mm.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/kit/colours.hpp"
#include "study/focus/budget_entry.hpp"

namespace beamfork {

struct Report;

/// One bar from `from` to `to` on the common axis of the waterfall.
struct BudgetBar {
    BudgetEntry entry = BudgetEntry::spends;
    ColourRole role = ColourRole::dimension;
    std::string label;
    std::string value;  ///< "+65.0", "-35.0"; the first and the last without a sign unless negative
    double from = 0;
    double to = 0;
    std::optional<std::size_t> part;
    std::string help;  ///< formula in words
};

/// The drawtube's travel: 0 (racked in) to `travel`, where it stands and where focus wants it. The axis from
/// `low` to `high` shows all three. With a moving mirror it is the mirror's travel, from fully up (which leaves
/// most light path to spend) to fully down.
struct TravelScale {
    double travel = 0;
    double present = 0;
    double wanted = 0;
    double low = 0;
    double high = 1;
    bool reaches = false;
    bool is_held = false;                ///< the user holds the drawtube instead of focusing
    ColourRole role = ColourRole::good;  ///< of the marker for the wanted place
    std::string margin_in;               ///< "12.0 mm left inward" or "30.2 mm too far in"
    std::string margin_out;              ///< likewise
    std::string sentence;                ///< "In focus with the drawtube 12.0 mm out of 80 mm."
    std::string help;                    ///< what the scale shows, in one or two sentences
};

struct FocusBudgetRows {
    std::vector<BudgetBar> bars;
    double low = 0;  ///< the waterfall's axis, always including 0
    double high = 1;
    TravelScale travel;
};

FocusBudgetRows focus_budget_rows(const Report& report);

/// One bar for each part that the budget names, all its rows added up: a shifter's length and what it gives
/// back, a sliding head at its middle and what its setting adds. The telescope's is what it offers.
std::vector<BudgetBar> budget_by_part(const Report& report);

}  // namespace beamfork
