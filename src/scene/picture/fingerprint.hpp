// A number that stands for the content of a Frame: equal frames have equal fingerprints, and two that differ
// have different ones but for one case in 2^64.
#pragma once

#include "scene/picture/frame.hpp"

namespace beamfork {

/// Over everything but the revision itself; never 0, which stands for "nothing yet".
std::uint64_t fingerprint(const Frame& frame);

}  // namespace beamfork
