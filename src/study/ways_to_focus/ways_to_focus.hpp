// Ways practitioners reach focus with a setup that does not: what each is, how many millimetres it gives
// back, whether that suffices, and what it costs. Those the program can carry out bring the changed setup.
// Which ways there are and how they rank is common practice, no source.
#pragma once

#include <string>
#include <vector>

#include "study/focus/focus_budget.hpp"
#include "study/ways_to_focus/reversibility.hpp"
#include "study/ways_to_focus/way_light.hpp"

namespace beamfork {

struct WayToFocus {
    std::string id;    ///< stable name for machines: "shifter_in_nose"
    std::string what;  ///< what to do, as an order: "Put a 1.6× shifter into the head's nose"
    std::string cost;  ///< what is lost by it, in a sentence
    Reversibility reversibility = Reversibility::exchange;
    Millimetres gained;  ///< light path given back, reduced; negative for a spacer
    bool reaches = false;
    Millimetres margin_in;  ///< travel left with it
    Millimetres margin_out;
    double magnification_ratio = 1;  ///< magnification with it over magnification without
    GivenLight light_before;         ///< of the setup as it is, wherever its drawtube ends up
    GivenLight light;                ///< with the way carried out
    Setup setup;                     ///< with the way carried out, its choice included
};

/// All ways worth telling for a setup that does not reach focus or has less than `thin_margin` left; those
/// that suffice first, then the easiest to go back on, then the ones that change least. Empty when all is
/// well. The light of each is traced with `effort`.
std::vector<WayToFocus> ways_to_focus(const Setup& setup,
                                      const Choice& choice,
                                      const FocusBudget& budget,
                                      ClippingEffort effort = {256});

/// Travel that should be left both ways. Common practice, no source: 5 to 10 mm.
constexpr Millimetres thin_margin{5};

}  // namespace beamfork
