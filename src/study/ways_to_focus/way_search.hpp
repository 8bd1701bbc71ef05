// The search for ways to focus: each candidate is a changed setup whose budget is worked out and kept when it
// helps. Ways by topic: ways_to_focus.cpp (what hangs behind the telescope), ways_at_telescope.cpp.
#pragma once

#include <string>
#include <vector>

#include "study/ways_to_focus/ways_to_focus.hpp"

namespace beamfork {

WayToFocus way_named(std::string id);

/// The widest lens whose cell slides into the front end of that part; 26 mm where its opening is wider or
/// unknown. A cell takes 1.5 mm all round (as study/fit/clearance has it).
Millimetres lens_that_fits_into(const Part& part);

/// The light of the setup as it is, and with how many rays it was traced.
struct LightToCompare {
    GivenLight before;
    ClippingEffort effort;
};

class WaySearch {
public:
    /// `budget` must outlive it.
    WaySearch(const Setup& setup,
              const Choice& choice,
              const FocusBudget& budget,
              const LightToCompare& light);

    /// Light path still to be found, with the margin that should be left.
    [[nodiscard]] Millimetres wanted() const { return thin_margin - budget_.margin_in; }
    /// The setup with that choice chosen.
    [[nodiscard]] const Setup& setup() const { return setup_; }
    [[nodiscard]] const Choice& choice() const { return setup_.chosen; }
    [[nodiscard]] const FocusBudget& budget() const { return budget_; }

    /// Works out the changed setup in `way`; one that cannot be built or gives nothing back is left out.
    void offer(WayToFocus way);
    /// Those that suffice first, then the easiest to go back on, then those that change least.
    std::vector<WayToFocus> take();

private:
    Setup setup_;
    const FocusBudget& budget_;
    LightToCompare light_;
    double power_;
    std::vector<WayToFocus> ways_;
};

void offer_ways_at_telescope(WaySearch& search);

}  // namespace beamfork
