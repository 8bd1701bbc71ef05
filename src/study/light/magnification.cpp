#include "study/light/magnification.hpp"

#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/target.hpp"
#include "train/telescope.hpp"

namespace beamfork {

Magnification magnification(const Setup& setup, const Choice& choice, const FocusBudget& budget) {
    const auto& target = part_as<Target>(setup, choice.target);
    std::optional<Millimetres> distance;
    if (target.distance) distance = to_millimetres(*target.distance);
    const TelescopeFacts telescope = telescope_of(setup, budget.primary_moved(), distance);
    const auto& eyepiece = part_as<EyepiecePair>(setup, choice.eyepiece);
    Magnification result;
    result.shifter_factor = std::abs(budget.factor());
    result.image_turned = budget.factor() < 0;
    result.effective_focal_length = telescope.working_focal_length * result.shifter_factor;
    result.focal_ratio = result.effective_focal_length / telescope.aperture;
    result.magnification = result.effective_focal_length / eyepiece.focal_length;
    result.true_field = to_degrees(
        Radians{2 * std::atan(eyepiece.field_stop / (2 * result.effective_focal_length))});
    result.exit_pupil = telescope.aperture / result.magnification;
    return result;
}

}  // namespace beamfork
