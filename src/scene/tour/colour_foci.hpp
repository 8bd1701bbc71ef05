// Where red, green and blue light come together at the left eye's field stop, drawn beside it and many times as large.
#pragma once

#include "scene/picture/picture.hpp"

namespace beamfork {

/// How many times as large the drawing is: a round number.
int colour_foci_scale(const Report& report);

/// The train with that drawing: each colour's rays cross at its own focus; the band that a perfect image would forgive
/// lies across them.
Frame colour_picture(const Setup& setup, const Report& report, const PictureEffort& effort);

}  // namespace beamfork
