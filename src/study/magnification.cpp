#include "study/magnification.hpp"

#include <cmath>

namespace beamfork {

Magnification magnification(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    const auto* telescope = find_part<Refractor>(setup);
    BEAMFORK_EXPECTS(telescope != nullptr);
    const auto& eyepiece = part_as<EyepiecePair>(setup, choice.eyepiece);
    Magnification result;
    result.shifter_factor = budget.factor();
    result.effective_focal_length = telescope->focal_length.value * result.shifter_factor;
    result.focal_ratio = result.effective_focal_length / telescope->aperture.value;
    result.magnification = result.effective_focal_length / eyepiece.focal_length.value;
    result.true_field = to_degrees(
        Radians{2 * std::atan(eyepiece.field_stop.value / (2 * result.effective_focal_length))});
    result.exit_pupil = telescope->aperture.value / result.magnification;
    return result;
}

}  // namespace beamfork
