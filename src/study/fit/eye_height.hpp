// Where the eyes must be as the telescope sweeps the sky from the horizon to the zenith: how high, and how steeply
// they look. For a mount that tips the tube about a level axis through its balance point.
#pragma once

#include <vector>

#include "train/train.hpp"

namespace beamfork {

/// Eyes of somebody standing, and sitting on a chair, mm above the ground. Common practice, no source; adults differ
/// by 150 mm either way.
constexpr double standing_eyes_mm = 1600;
constexpr double sitting_eyes_mm = 1200;

struct EyePlace {
    double altitude = 0;  ///< of what is looked at, degrees
    double height =
        0;            ///< of the eyepieces' field stops above the mount's axis, mm; negative: below
    double gaze = 0;  ///< degrees above the horizon; -90: straight down
};

struct EyeHeight {
    double pivot = 0;  ///< the mount's axis, mm behind the objective's place
    bool pivot_is_stated =
        false;  ///< else taken half way from the objective to the focuser's rear end
    std::vector<EyePlace> places;  ///< from the horizon up, every 30 degrees
    double lowest = 0;             ///< of all altitudes
    double highest = 0;
    /// Between these heights, mm, the axis would have to move to keep the eyes at one height.
    [[nodiscard]] double range() const { return highest - lowest; }
};

/// The focuser stays as it is set on the tube.
EyeHeight eye_height(const Setup& setup, const Train& train);

}  // namespace beamfork
