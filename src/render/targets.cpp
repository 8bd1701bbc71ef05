#include "render/targets.hpp"

#include <string>

namespace beamfork {

namespace {

struct TextureFormat {
    GLint internal;
    GLenum format;
    GLenum type;
    GLint filter;
};

constexpr TextureFormat display_colour{GL_RGBA8, GL_RGBA, GL_UNSIGNED_BYTE, GL_NEAREST};
constexpr TextureFormat smooth_display_colour{GL_RGBA8, GL_RGBA, GL_UNSIGNED_BYTE, GL_LINEAR};
constexpr TextureFormat linear_light{GL_RGBA16F, GL_RGBA, GL_HALF_FLOAT, GL_LINEAR};
constexpr TextureFormat depth{GL_DEPTH_COMPONENT24, GL_DEPTH_COMPONENT, GL_UNSIGNED_INT,
                              GL_NEAREST};

Texture texture_of(const TextureFormat& format, int width, int height) {
    Texture made = Texture::create();
    glBindTexture(GL_TEXTURE_2D, made.name());
    glTexImage2D(GL_TEXTURE_2D, 0, format.internal, width, height, 0, format.format, format.type,
                 nullptr);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, format.filter);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, format.filter);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    return made;
}

/// A framebuffer of one colour texture and, where given, a depth texture.
Result<Framebuffer> framebuffer_of(const Texture& colour, const Texture* depth_texture) {
    Framebuffer made = Framebuffer::create();
    glBindFramebuffer(GL_FRAMEBUFFER, made.name());
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colour.name(), 0);
    if (depth_texture != nullptr) {
        glFramebufferTexture2D(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_TEXTURE_2D,
                               depth_texture->name(), 0);
    }
    if (glCheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE) {
        return fail(ErrorCode::no_graphics, "the driver offers no framebuffer of this kind");
    }
    return made;
}

}  // namespace

Result<void> Targets::resize(const PictureSize& size) {
    if (size.width == size_.width && size.height == size_.height) {
        size_ = size;
        if (size.samples <= 1 || size.samples == samples_made_) return {};
        return make_samples();  // the draft and the careful picture share all other targets
    }
    GLint largest = 0;
    glGetIntegerv(GL_MAX_RENDERBUFFER_SIZE, &largest);
    if (size.width < 1 || size.height < 1 || size.width > largest || size.height > largest) {
        return fail(ErrorCode::no_graphics, "a picture of " + std::to_string(size.width) + " x "
                                                + std::to_string(size.height)
                                                + " pixels cannot be drawn here (1 to "
                                                + std::to_string(largest) + " a side)");
    }
    Targets made;
    made.size_ = size;
    if (auto ok = made.make_textures(); !ok) return ok;
    if (size.samples > 1) {
        if (auto ok = made.make_samples(); !ok) return ok;
    }
    *this = std::move(made);
    return {};
}

Result<void> Targets::make_textures() {
    const int w = size_.width;
    const int h = size_.height;
    body_texture_ = texture_of(display_colour, w, h);
    depth_texture_ = texture_of(depth, w, h);
    light_texture_ = texture_of(linear_light, w, h);
    result_texture_ = texture_of(smooth_display_colour, w, h);
    const auto make = [](Framebuffer& into, const Texture& colour,
                         const Texture* with_depth) -> Result<void> {
        auto made = framebuffer_of(colour, with_depth);
        if (!made) return tl::make_unexpected(made.error());
        into = *std::move(made);
        return {};
    };
    Result<void> ok = make(bodies_, body_texture_, &depth_texture_);
    if (ok) ok = make(light_, light_texture_, &depth_texture_);
    if (ok) ok = make(result_, result_texture_, &depth_texture_);
    for (std::size_t i = 0; i < bloom_.size() && ok; ++i) {
        bloom_textures_[i] = texture_of(linear_light, bloom_width(), bloom_height());
        ok = make(bloom_[i], bloom_textures_[i], nullptr);
    }
    return ok;
}

Result<void> Targets::make_samples() {
    GLint most = 1;
    glGetIntegerv(GL_MAX_SAMPLES, &most);
    const GLint samples = size_.samples < most ? size_.samples : most;
    sample_colour_ = Renderbuffer::create();
    sample_depth_ = Renderbuffer::create();
    samples_ = Framebuffer::create();
    glBindFramebuffer(GL_FRAMEBUFFER, samples_.name());
    glBindRenderbuffer(GL_RENDERBUFFER, sample_colour_.name());
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, GL_RGBA8, size_.width, size_.height);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER,
                              sample_colour_.name());
    glBindRenderbuffer(GL_RENDERBUFFER, sample_depth_.name());
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, GL_DEPTH_COMPONENT24, size_.width,
                                     size_.height);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER,
                              sample_depth_.name());
    if (glCheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE) {
        return fail(ErrorCode::no_graphics, "the driver offers no multisampled framebuffer");
    }
    samples_made_ = size_.samples;
    return {};
}

void Targets::bind(const Framebuffer& framebuffer, int width, int height) const {
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer.name());
    glViewport(0, 0, width, height);
}

void Targets::bind_bodies() const {
    bind(size_.samples > 1 ? samples_ : bodies_, size_.width, size_.height);
}

void Targets::resolve_bodies() const {
    if (size_.samples <= 1) return;
    glBindFramebuffer(GL_READ_FRAMEBUFFER, samples_.name());
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, bodies_.name());
    glBlitFramebuffer(0, 0, size_.width, size_.height, 0, 0, size_.width, size_.height,
                      GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT, GL_NEAREST);
}

void Targets::bind_light() const { bind(light_, size_.width, size_.height); }
void Targets::bind_bloom(int index) const { bind(bloom_.at(index), bloom_width(), bloom_height()); }
void Targets::bind_result() const { bind(result_, size_.width, size_.height); }

}  // namespace beamfork
