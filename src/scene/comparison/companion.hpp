// A second train in the picture of the first, to compare them: over it, or beside it.
#pragma once

#include <string>

#include "scene/picture/frame.hpp"

namespace beamfork {

/// How two setups that are compared share the picture.
enum class CompanionPlace { none, over, beside, split };

/// `now` with the other train where it stands itself: its bodies translucent where they differ, its light in the
/// role of a ghost. Nothing of it can be picked.
Frame with_other_over(const Frame& now, const Frame& other, const std::string& words);

/// `now` with the other train beside it, to the observer's right, whole, with its own warnings; `words` stands above it.
/// Bounds hold both, so that an overview shows both. Nothing of the other can be picked.
Frame with_other_beside(const Frame& now, const Frame& other, const std::string& words);

/// One half of a picture that is split between two setups: the train as it is, with `words` above it.
Frame as_half(const Frame& frame, const std::string& words);

}  // namespace beamfork
