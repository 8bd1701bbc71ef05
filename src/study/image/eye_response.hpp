// How strongly the eye answers to each traced wavelength, by day and by night.
#pragma once

#include "train/train.hpp"

namespace beamfork {

enum class EyeState {
    day,   ///< cones: bright targets, the Moon and planets
    night  ///< rods: faint targets, dark-adapted
};

/// Relative to the peak of its own curve. Day: CIE 1924 V(lambda), 0.17624 and 0.18356 at 486 and 487 nm, 0.98409
/// and 0.98742 at 546 and 547, 0.07712 and 0.07283 at 656 and 657. Night: CIE 1951 V'(lambda), 0.548 and 0.531 at
/// 546 and 547 nm, 0.000425 and 0.0003935 at 656 and 657; 0.862 and 0.873 at 486 and 487 from memory. All as in the
/// 1 nm tables, between which these are linear.
constexpr PerWavelength eye_response(EyeState state) {
    return state == EyeState::day ? PerWavelength{0.17721, 0.98434, 0.07595}
                                  : PerWavelength{0.8635, 0.54674, 0.000416};
}

}  // namespace beamfork
