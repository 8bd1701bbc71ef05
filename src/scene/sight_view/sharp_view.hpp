// The subject as an eye without any blur would have it.
#pragma once

#include "scene/sight_view/sight_view_grid.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

/// Points of light, not areas.
inline bool is_points(const SightScene& scene) {
    return scene.subject == SightSubject::stars || scene.subject == SightSubject::double_star;
}

/// Extended subjects by their surface brightness, stars by all their light in the pixels nearest to them.
SightPlanes sharp_planes(const EyeSight& sight,
                         const SightScene& scene,
                         const SightFrame& frame,
                         const SightGrid& grid);

}  // namespace beamfork
