#include "render/palette.hpp"

namespace beamfork {

Palette::Palette() {
    for (std::size_t i = 0; i < roles_.size(); ++i)
        roles_[i] = role_rgb(static_cast<ColourRole>(i));
    for (std::size_t i = 0; i < zones_.size(); ++i)
        zones_[i] = linear_rgb(pupil_zone(pupil_places.at(i)).srgb_hex);
}

}  // namespace beamfork
