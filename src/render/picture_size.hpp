// How large and how carefully a picture is drawn.
#pragma once

namespace beamfork {

struct PictureSize {
    int width = 1280;
    int height = 720;
    int samples = 4;   ///< per pixel for edges of bodies; 1 switches it off
    bool glow = true;  ///< the soft halo round bright light
    float pixel_scale =
        1;  ///< multiplies widths given in pixels (2 on a display of double density)
    bool transparent = false;  ///< no ground: see Renderer::read_pixels
    bool operator==(const PictureSize&) const = default;
};

/// The quick variant for frames while the camera or a slider moves.
constexpr PictureSize draft(PictureSize size) {
    size.samples = 1;
    size.glow = false;
    return size;
}

}  // namespace beamfork
