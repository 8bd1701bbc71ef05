// The train pulled apart along its folded axis, so that each part is seen alone.
//
// Every joint opens along the axis there, by so much that what was put into each other stands clear; the splitter head
// stays where it is. Thin dashed lines along the axis join what belongs together. Light is drawn only of the train that
// is together: in a longer one it would run otherwise.
#pragma once

#include "scene/picture/picture.hpp"

namespace beamfork {

/// Up to this much of the way the light of the closed train is still seen, ever fainter.
constexpr float light_fades_until = 0.1F;

/// Where each of Train::placed goes when all is pulled apart, mm.
std::vector<Direction> pulled_places(const Setup& setup, const Train& train);

/// The picture with everything so far on its way, 0 together .. 1. `report` must be of this setup.
Frame pulled_apart(const Setup& setup,
                   const Report& report,
                   float amount,
                   const PictureEffort& effort = {});

/// Slow at both ends: 0 .. 1 to 0 .. 1.
float apart_after(float done);

}  // namespace beamfork
