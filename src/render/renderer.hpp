// Draws a Frame as a picture: the one door from plain scene data to OpenGL.
//
// Needs an OpenGL 3.3 core context, current on the calling thread, with glad loaded (app's window or
// render/offscreen.hpp), at every call and at destruction: let the renderer die before its context.
// It always draws into its own framebuffer, so window, command line and tests get the same pixels.
// After draw() no framebuffer of the renderer is bound; other state is unspecified: whoever draws next
// sets their own.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "render/image.hpp"
#include "render/picture_size.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/frame.hpp"
#include "scene/picture/view_options.hpp"

namespace beamfork {

/// An OpenGL texture name, for ImGui::Image; its row 0 is the BOTTOM of the picture (show it with v
/// from 1 to 0).
using PictureTexture = unsigned;

class Renderer {
public:
    /// Error `no_graphics` when a shader does not compile on this driver.
    static Result<Renderer> create();

    Renderer(const Renderer&) = delete;
    Renderer& operator=(const Renderer&) = delete;
    Renderer(Renderer&&) noexcept;
    Renderer& operator=(Renderer&&) noexcept;
    ~Renderer();

    /// Sends the frame to the graphics card; free of cost when its revision is the one last sent.
    void upload(const Frame& frame);

    /// Draws what was uploaded last. `highlighted_part` is an index as in Mesh::part, -1 for none; `emphasis` says
    /// which parts have faded.
    /// Error `no_graphics` when a picture of this size cannot be had; the previous one stays.
    Result<PictureTexture> draw(const Camera& camera,
                                const ViewOptions& options,
                                const PictureSize& size,
                                int highlighted_part = -1,
                                const Emphasis& emphasis = {});

    /// Returns when all that was asked for has been drawn.
    void finish() const;

    /// The picture last drawn; empty (0 x 0) before the first. Without a ground (PictureSize::transparent) its
    /// colours are multiplied by alpha: `over` and `straight` (render/image.hpp) take them so.
    [[nodiscard]] Image read_pixels() const;

    /// What the driver complained about since the last call; empty when all is well.
    std::vector<std::string> take_errors();

private:
    struct Parts;
    explicit Renderer(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace beamfork
