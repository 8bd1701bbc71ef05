// The same parts put together otherwise for a while: one eyepiece without the head, both eyes without the
// diagonal, without the shifter. Where focus lies then, and whether the drawtube goes there.
#pragma once

#include <string>
#include <vector>

#include "study/focus/focus_budget.hpp"

namespace beamfork {

enum class Use { one_eye, straight_through, without_shifter };

/// "one_eye", as in JSON.
std::string to_word(Use use);

struct OtherUse {
    Use use = Use::one_eye;
    std::vector<std::size_t> removed;  ///< the parts that are taken out
    Millimetres drawtube{};            ///< wanted extension
    Millimetres change{};              ///< against the setup as it is, outward positive
    Millimetres margin_in{};
    Millimetres margin_out{};
    bool reaches = false;
    Millimetres shortfall{};  ///< by which the drawtube cannot follow; 0 when it reaches
    bool shortfall_is_inward = true;
};

/// Those that this setup allows: a use needs the part that it takes out. `budget` is of that setup and choice.
/// With one eye the eyepiece stands straight in the last part's rear face, and the drawtube serves the left eye
/// alone; a shifter that stands in the head's nose (right before the head, without a length of its own) goes with the
/// head. Errors as build_train.
Result<std::vector<OtherUse>>
other_uses(const Setup& setup, const Choice& choice, const FocusBudget& budget);

}  // namespace beamfork
