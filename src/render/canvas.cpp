#include "render/canvas.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace beamfork {

Result<Canvas> Canvas::create(int width, int height) {
    Canvas canvas;
    canvas.width_ = width;
    canvas.height_ = height;
    canvas.colour_ = Texture::create();
    glBindTexture(GL_TEXTURE_2D, canvas.colour_.name());
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    canvas.framebuffer_ = Framebuffer::create();
    glBindFramebuffer(GL_FRAMEBUFFER, canvas.framebuffer_.name());
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D,
                           canvas.colour_.name(), 0);
    const bool is_whole = glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    if (!is_whole) {
        return fail(ErrorCode::no_graphics,
                    fmt::format("the graphics driver cannot draw {} x {} pixels", width, height));
    }
    return canvas;
}

void Canvas::clear_to(float alpha) const {
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.name());
    glViewport(0, 0, width_, height_);
    glClearColor(0, 0, 0, alpha);
    glClear(GL_COLOR_BUFFER_BIT);
}

void Canvas::bind() const { clear_to(1); }
void Canvas::bind_layer() const { clear_to(0); }

Image Canvas::read_pixels() const {
    Image image = read_layer();
    for (std::size_t i = 3; i < image.rgba.size(); i += 4)
        image.rgba[i] = 255;
    return image;
}

Image Canvas::read_layer() const {
    Image image{width_, height_, {}};
    const auto row_bytes = static_cast<std::size_t>(width_) * 4;
    image.rgba.resize(row_bytes * static_cast<std::size_t>(height_));
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.name());
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width_, height_, GL_RGBA, GL_UNSIGNED_BYTE, image.rgba.data());
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    for (int y = 0; y < height_ / 2; ++y) {  // OpenGL counts rows from below
        const auto top = image.rgba.begin() + static_cast<std::ptrdiff_t>(row_bytes) * y;
        const auto bottom =
            image.rgba.begin() + static_cast<std::ptrdiff_t>(row_bytes) * (height_ - 1 - y);
        std::swap_ranges(top, top + static_cast<std::ptrdiff_t>(row_bytes), bottom);
    }
    return image;
}

void clear_window(int width, int height) {
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    glViewport(0, 0, width, height);
    glClearColor(0, 0, 0, 1);
    glClear(GL_COLOR_BUFFER_BIT);
}

}  // namespace beamfork
