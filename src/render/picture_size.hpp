// How large and how carefully a picture is drawn.
#pragma once

#include <algorithm>
#include <cmath>

namespace beamfork {

struct PictureSize {
    int width = 1280;
    int height = 720;
    int samples = 4;    ///< per pixel for edges of bodies; 1 switches it off
    bool bloom = true;  ///< the soft light round what is bright
    /// Share of the rays that are drawn, each the brighter for it: a quarter, half, or all.
    float rays = 1;
    /// Multiplies widths given in pixels (2 on a display of double density).
    float pixel_scale = 1;
    bool transparent = false;  ///< no ground: see Renderer::read_pixels
    bool operator==(const PictureSize&) const = default;
};

/// The quick variant for frames while the camera or a slider moves: of the pixels along each side only `share`,
/// 0 to 1, to be shown enlarged; of the rays as many as PictureSize::rays says.
inline PictureSize draft(PictureSize size, float share = 1, float rays = 1) {
    const auto part_of = [share](int pixels) {
        return std::max(1, static_cast<int>(std::lround(static_cast<float>(pixels) * share)));
    };
    size.width = part_of(size.width);
    size.height = part_of(size.height);
    size.pixel_scale *= share;
    size.samples = 1;
    size.bloom = false;
    size.rays = rays;
    return size;
}

}  // namespace beamfork
