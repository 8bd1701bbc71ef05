// How far a body reaches in a direction: for clearances to what stands beside a train.
#pragma once

#include "parts/layout.hpp"

namespace beamfork {

/// The greatest distance from the outer frame's origin along `direction` (unit) of any point of the body, which
/// stands at that pose in that frame; mm. Exact for round and flat shapes; a lens and a dish count as discs
/// as thick as they are in the middle and at the edge.
double reach_of(const BodyShape& shape, const Pose& outer_from_body, const Direction& direction);

}  // namespace beamfork
