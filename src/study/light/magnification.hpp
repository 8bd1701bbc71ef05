// Magnification and field: what the shifter really does, and what follows for focal length, f-number,
// power, true field and exit pupil.
#pragma once

#include "study/focus/focus_budget.hpp"

namespace beamfork {

struct Magnification {
    double shifter_factor = 1;  ///< of all shifters together, from their real spacing; its size
    bool image_turned = false;  ///< by 180°, by a lens that relays the image: all else are sizes
    Millimetres
        effective_focal_length;  ///< telescope's at this focus and for this target times that
    double focal_ratio = 0;      ///< N at the field stop
    double magnification = 0;    ///< effective focal length / eyepiece focal length
    Degrees true_field;          ///< 2 atan(field stop / (2 effective focal length))
    Millimetres exit_pupil;      ///< aperture / magnification
};

/// W. J. Smith, Modern Optical Engineering, 4th ed., sec. 13.1 and Eq. 13.5.
Magnification magnification(const Setup& setup, const Choice& choice, const FocusBudget& budget);

}  // namespace beamfork
