// The factor and gain that a shifter's maker states: at which distance that pair holds, and what becomes of it where the
// lens stands.
#pragma once

#include <optional>
#include <string>

#include "parts/shifter.hpp"
#include "study/focus/focus_budget.hpp"

namespace beamfork {

struct StatedPairAtWork {
    double factor = 1;        ///< as stated
    Millimetres gain;         ///< as stated; negative for a reducer
    Millimetres holds_at;     ///< from the lens to the field stop, reduced
    Millimetres distance;     ///< where it stands
    double factor_there = 1;  ///< real
    Millimetres gain_there;   ///< real
};

/// Nothing for a part that is no shifter, is given by its focal length, or is not in the light.
std::optional<StatedPairAtWork>
stated_pair_at_work(const Setup& setup, const FocusBudget& budget, std::size_t part);

/// "1.70× and 35.0 mm hold 85.0 mm before the field stop; here its lens is 105.0 mm before it, works at 1.87× and gives
/// back 48.7 mm".
std::string to_words(const StatedPairAtWork& pair);

/// That both following from the distance is how a lens works, and no error.
inline constexpr const char* stated_pair_is_physics =
    "That is how a lens works, and no error: factor and gain both follow from its distance.";

}  // namespace beamfork
