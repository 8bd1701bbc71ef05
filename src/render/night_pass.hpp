// Red light for the dark-adapted eye: whatever was drawn, shown in the red channel alone.
//
// Rods, which see at night, hardly answer to light beyond 620 nm: at 620 nm the scotopic eye has 0.0007 of its
// peak sensitivity (CIE 1951 scotopic V', CIE 018:2019, from memory). A display's red still leaks a little, so
// the picture is dimmed too. The red of a pixel is as bright, in linear light, as its colour was: the
// contrast of words and signs stays what it was by day.
#pragma once

#include "base/error.hpp"
#include "render/canvas.hpp"
#include "render/gl_object.hpp"
#include "render/program.hpp"

namespace beamfork {

class NightPass {
public:
    /// Error `no_graphics` when the shader does not compile on this driver.
    static Result<NightPass> create();

    /// Draws `picture` (a texture of display colours) over all of the framebuffer that is bound, pixel by
    /// pixel. What was white becomes red of that `brightness`, 0 to 1, in linear light.
    void draw(GLuint picture, float brightness) const;

private:
    Program program_;
    VertexArray layout_;
};

/// What a canvas holds, in red. Leaves no framebuffer bound. Errors as create() and Canvas::create.
Result<Image> read_in_red(const Canvas& canvas, float brightness);

/// The window's own framebuffer, by day as it is, by night in red: nothing that is drawn between begin() and
/// end() can be shown in another colour.
class NightScreen {
public:
    static Result<NightScreen> create();

    /// Binds what is drawn into next, cleared to black. Error `no_graphics` when there is no room for it.
    Result<void> begin(int width, int height, bool is_night);
    /// Brings it to the window.
    void end(float brightness) const;

private:
    NightPass pass_;
    Canvas canvas_;
    int width_ = 0;
    int height_ = 0;
    bool is_night_ = false;
};

}  // namespace beamfork
