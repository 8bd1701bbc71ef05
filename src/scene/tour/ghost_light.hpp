// The light of a setup as it was, drawn as a ghost into the picture of what has become of it: its cone and its image.
#pragma once

#include <string>

#include "scene/picture/picture.hpp"

namespace beamfork {

/// Only behind the drawtube: in front of it nothing has changed. Rays from the middle of the field that reach an eye;
/// their image bears `words`.
/// Nothing is added where `was` makes no train.
void add_ghost_light(Frame& frame,
                     const Setup& was,
                     const std::string& words,
                     const PictureEffort& effort);

}  // namespace beamfork
