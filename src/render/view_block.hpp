// What every shader of one picture knows: the uniform block View of shaders/common.glsl.
#pragma once

#include "render/picture_size.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/view_options.hpp"

#include <glm/glm.hpp>

namespace beamfork {

/// std140 layout; names and meaning as in shaders/common.glsl.
struct ViewBlock {
    glm::mat4 clip_from_world{1};
    glm::vec4 eye{0};      ///< xyz: eye in the world; w: distance to the target
    glm::vec4 right{0};    ///< xyz: picture axis; w: 1 on light ground, else 0
    glm::vec4 up{0};       ///< xyz: picture axis; w: pixels per mm at 1 mm from the eye
    glm::vec4 back{0};     ///< xyz: towards the viewer; w: pixel scale
    glm::vec4 picture{0};  ///< width, height, depth of the near plane in mm, unused
};

ViewBlock view_block(const Camera& camera, const ViewOptions& options, const PictureSize& size);

}  // namespace beamfork
