#include "render/view_block.hpp"

#include <cmath>

namespace beamfork {

ViewBlock view_block(const Camera& camera, const ViewOptions& options, const PictureSize& size) {
    const auto width = static_cast<float>(size.width);
    const auto height = static_cast<float>(size.height);
    const CameraAxes a = camera_axes(camera);
    const glm::mat4 clip = clip_from_view(camera, width / height);
    ViewBlock block;
    block.clip_from_world = clip * view_from_world(camera);
    block.eye = glm::vec4(eye_position(camera), camera.distance_mm);
    block.right = glm::vec4(a.right, options.on_light_ground() ? 1.0F : 0.0F);
    block.up = glm::vec4(a.up, 0.5F * height / std::tan(0.5F * camera.field_of_view_rad));
    block.back = glm::vec4(a.back, size.pixel_scale);
    block.picture = glm::vec4(width, height, clip[3][2] / (clip[2][2] - 1), 0);
    return block;
}

}  // namespace beamfork
