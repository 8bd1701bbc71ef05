// The light of a setup as it was, drawn as a ghost into the picture of what has become of it: its cone and its image.
#pragma once

#include <string>

#include "scene/picture/picture.hpp"

namespace beamfork {

/// Only rays from the middle of the field that reach the left eye's arm and the right one's; their image bears `words`.
/// Nothing is added where `was` makes no train.
void add_ghost_light(Frame& frame,
                     const Setup& was,
                     const std::string& words,
                     const PictureEffort& effort);

}  // namespace beamfork
