#include "study/focus/stated_pair.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace beamfork {

std::optional<StatedPairAtWork>
stated_pair_at_work(const Setup& setup, const FocusBudget& budget, std::size_t part) {
    const auto* lens = setup.parts.at(part).body.as<Shifter>();
    if (lens == nullptr || lens->given != ShifterGiven::factor_and_gain) return std::nullopt;
    const auto found = std::find_if(budget.shifters.begin(), budget.shifters.end(),
                                    [&](const ShifterAtWork& one) { return one.part == part; });
    if (found == budget.shifters.end()) return std::nullopt;
    return StatedPairAtWork{
        .factor = lens->stated_factor,
        .gain = lens->stated_gain,
        .holds_at = lens_of_stated_pair(lens->stated_factor, lens->stated_gain).image_distance,
        .distance = Millimetres{found->image_distance},
        .factor_there = found->factor,
        .gain_there = Millimetres{found->gain}};
}

std::string to_words(const StatedPairAtWork& pair) {
    const auto moves = [](Millimetres gain) {
        return fmt::format("{} {:.1f} mm", gain.value < 0 ? "takes" : "gives back",
                           std::abs(gain.value));
    };
    return fmt::format("{:.2f}× and {:.1f} mm hold {:.1f} mm before the field stop; here its lens "
                       "is {:.1f} mm before it, works at {:.2f}× and {}",
                       pair.factor, pair.gain.value, pair.holds_at.value, pair.distance.value,
                       pair.factor_there, moves(pair.gain_there));
}

}  // namespace beamfork
