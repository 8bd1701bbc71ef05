// The fully lit field: the largest circle about the middle of the field stop from every point of which all of the
// objective's light arrives.
#pragma once

#include "study/light/lit_path.hpp"

namespace beamfork {

/// Its radius in units of the field stop's, 0..1, by rays along the pupil's rim; 0: not even the middle. To within a
/// four-thousandth of the field stop's radius along the direction in which the field is cut first; that direction is
/// sought to half a degree.
double fully_lit_fraction(LitPath& way);

}  // namespace beamfork
