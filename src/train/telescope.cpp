#include "train/telescope.hpp"

namespace beamfork {

TelescopeFacts telescope_of(const Setup& setup) {
    const auto* refractor = find_part<Refractor>(setup);
    BEAMFORK_EXPECTS(refractor != nullptr);
    return {refractor->aperture, refractor->focal_length, refractor->back_focus, Millimetres{0}};
}

}  // namespace beamfork
