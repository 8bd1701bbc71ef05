#include "scene/picture/shell_opening.hpp"

#include <algorithm>
#include <cmath>

#include <glm/gtc/constants.hpp>

namespace beamfork {

namespace {

// 62 degrees to each side: one sees in, the back stays round.
constexpr float half_opening_rad = 1.08F;

}  // namespace

ShellOpening
shell_opening(const glm::vec3& eye, const glm::vec3& axis_point, const glm::vec3& axis) {
    const glm::vec3 to_eye = eye - axis_point;
    const glm::vec3 across = to_eye - glm::dot(to_eye, axis) * axis;
    const float distance = glm::length(across);
    const float slant = distance / std::max(1e-3F, glm::length(to_eye));
    const float opened = glm::smoothstep(0.22F, 0.50F, slant);
    if (distance < 1e-3F || opened <= 0) return {};
    return {across / distance, std::cos(opened * half_opening_rad)};
}

bool is_opened_at(const Mesh& shell, const glm::vec3& place, const glm::vec3& eye) {
    const ShellOpening opening = shell_opening(eye, shell.shell_axis_point, shell.shell_axis);
    const glm::vec3 from_axis = place - shell.shell_axis_point;
    const glm::vec3 across = from_axis - glm::dot(from_axis, shell.shell_axis) * shell.shell_axis;
    const float distance = glm::length(across);
    return distance > 1e-6F && glm::dot(across / distance, opening.towards) > opening.cosine;
}

}  // namespace beamfork
