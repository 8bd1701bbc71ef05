#include "study/light/magnification.hpp"

#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "train/telescope.hpp"

namespace beamfork {

Magnification magnification(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    const TelescopeFacts telescope = telescope_of(setup);
    const Millimetres focal_length =
        budget.primary ? Millimetres{budget.primary->focal_length} : telescope.focal_length;
    const auto& eyepiece = part_as<EyepiecePair>(setup, choice.eyepiece);
    Magnification result;
    result.shifter_factor = std::abs(budget.factor());
    result.image_turned = budget.factor() < 0;
    result.effective_focal_length = focal_length * result.shifter_factor;
    result.focal_ratio = result.effective_focal_length / telescope.aperture;
    result.magnification = result.effective_focal_length / eyepiece.focal_length;
    result.true_field = to_degrees(
        Radians{2 * std::atan(eyepiece.field_stop / (2 * result.effective_focal_length))});
    result.exit_pupil = telescope.aperture / result.magnification;
    return result;
}

}  // namespace beamfork
