// A plain framebuffer to draw panels and words into when there is no window: one colour plane, RGBA.
//
// Needs a current context, as render/renderer.hpp says.
#pragma once

#include "base/error.hpp"
#include "render/gl_object.hpp"
#include "render/image.hpp"

namespace beamfork {

class Canvas {
public:
    /// Error `no_graphics` when the driver refuses that size.
    static Result<Canvas> create(int width, int height);

    /// Everything drawn next goes here; it is cleared to black.
    void bind() const;
    /// What was drawn, and back to no framebuffer.
    [[nodiscard]] Image read_pixels() const;
    /// In pixels; 0 before create().
    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    /// For NightPass; 0 before create().
    [[nodiscard]] GLuint texture() const { return colour_.name(); }

    /// As both above, but cleared to nothing, and with colours multiplied by alpha: for `over` (render/image.hpp).
    void bind_layer() const;
    [[nodiscard]] Image read_layer() const;

private:
    void clear_to(float alpha) const;
    int width_ = 0;
    int height_ = 0;
    Texture colour_;
    Framebuffer framebuffer_;
};

/// Clears the window's own framebuffer to black and sets the viewport to its size in pixels.
void clear_window(int width, int height);

}  // namespace beamfork
