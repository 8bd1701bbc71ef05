// How a metal shell opens towards the viewer: what faces the viewer within an angle about the shell's axis is
// left out. Every point of one shell uses the same direction, so that the cut is a straight line along it.
#pragma once

#include "scene/picture/frame.hpp"

namespace beamfork {

struct ShellOpening {
    glm::vec3 towards{0, 1, 0};  ///< unit, from the axis to the viewer, square to the axis
    float cosine = 2;  ///< metal is left out where its direction's cosine with `towards` is larger
};

/// Looking along the axis the opening closes (cosine above 1), for there its direction would jump.
ShellOpening
shell_opening(const glm::vec3& eye, const glm::vec3& axis_point, const glm::vec3& axis);

/// Whether the shell's metal at `place` is left out for a viewer at `eye`.
bool is_opened_at(const Mesh& shell, const glm::vec3& place, const glm::vec3& eye);

}  // namespace beamfork
