// Which colour each role of a Frame is drawn in, and each zone of the objective: one table, in linear RGB.
//
// It is the colour on dark ground. On light ground shaders darken it as ink (`ink` in shaders/common.glsl), and by
// night the finished window becomes red (shaders/night.frag): both follow from this one.
#pragma once

#include <array>

#include "scene/kit/colours.hpp"
#include "scene/picture/pupil_paint.hpp"

namespace beamfork {

class Palette {
public:
    Palette();
    [[nodiscard]] const Rgb& of(ColourRole role) const {
        return roles_[static_cast<std::size_t>(role)];
    }
    [[nodiscard]] const Rgb& of(PupilPlace zone) const {
        return zones_[static_cast<std::size_t>(zone)];
    }

private:
    std::array<Rgb, colour_role_count> roles_;
    std::array<Rgb, pupil_places.size()> zones_;
};

}  // namespace beamfork
