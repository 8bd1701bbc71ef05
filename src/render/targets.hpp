// The framebuffers of one picture size: multisampled bodies, light in floating point, bloom, result.
#pragma once

#include <array>

#include "base/error.hpp"
#include "render/gl_object.hpp"
#include "render/picture_size.hpp"

namespace beamfork {

class Targets {
public:
    /// Error `no_graphics` when the driver cannot provide a picture of this size; the old one stays.
    Result<void> resize(const PictureSize& size);

    [[nodiscard]] const PictureSize& size() const { return size_; }

    void bind_bodies() const;     ///< encoded colour, alpha = covered; own depth
    void resolve_bodies() const;  ///< makes `body_texture` and the shared depth from the samples
    void bind_light() const;      ///< linear light, depth of the bodies
    void bind_bloom(int index) const;
    void bind_result() const;  ///< display colour, depth of the bodies

    [[nodiscard]] GLuint body_texture() const { return body_texture_.name(); }
    [[nodiscard]] GLuint light_texture() const { return light_texture_.name(); }
    [[nodiscard]] GLuint bloom_texture(int index) const { return bloom_textures_.at(index).name(); }
    [[nodiscard]] GLuint result_texture() const { return result_texture_.name(); }
    [[nodiscard]] int bloom_width() const { return (size_.width + 3) / 4; }
    [[nodiscard]] int bloom_height() const { return (size_.height + 3) / 4; }

private:
    Result<void> make_textures();
    Result<void> make_samples();
    void bind(const Framebuffer& framebuffer, int width, int height) const;

    PictureSize size_{.width = 0, .height = 0};
    int samples_made_ = 0;
    Texture body_texture_;
    Texture depth_texture_;
    Texture light_texture_;
    Texture result_texture_;
    std::array<Texture, 2> bloom_textures_;
    Renderbuffer sample_colour_;
    Renderbuffer sample_depth_;
    Framebuffer samples_;
    Framebuffer bodies_;
    Framebuffer light_;
    Framebuffer result_;
    std::array<Framebuffer, 2> bloom_;
};

}  // namespace beamfork
