// Where the eyes must be as the telescope sweeps the sky from the horizon to the zenith: how high, and how steeply
// they look. For a mount that tips the tube about a level axis through its balance point.
#pragma once

#include <vector>

#include "train/train.hpp"

namespace beamfork {

/// Eyes of somebody standing, and sitting on a chair, above the ground. Common practice, no source; adults differ
/// by 150 mm either way.
constexpr Millimetres standing_eyes{1600};
constexpr Millimetres sitting_eyes{1200};

struct EyePlace {
    Degrees altitude;    ///< of what is looked at
    Millimetres height;  ///< of the eyepieces' field stops above the mount's axis; negative: below
    Degrees gaze;        ///< above the horizon; -90: straight down
};

struct EyeHeight {
    Millimetres pivot;  ///< the mount's axis behind the objective's place
    bool pivot_is_stated =
        false;  ///< else taken half way from the objective to the focuser's rear end
    std::vector<EyePlace> places;  ///< from the horizon up, every 30 degrees
    Millimetres lowest;            ///< of all altitudes
    Millimetres highest;
    /// Between these heights the axis would have to move to keep the eyes at one height.
    [[nodiscard]] Millimetres range() const { return highest - lowest; }
};

/// The focuser stays as it is set on the tube.
EyeHeight eye_height(const Setup& setup, const Train& train);

}  // namespace beamfork
