#include "render/gpu_discs.hpp"

#include <algorithm>

#include "base/contract.hpp"

namespace beamfork {

namespace {

Texture smooth_texture() {
    Texture texture = Texture::create();
    glBindTexture(GL_TEXTURE_2D, texture.name());
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    return texture;
}

}  // namespace

void GpuDiscs::upload(const std::vector<ImageDisc>& discs, const Palette& palette) {
    count_ = discs.size();
    if (textures_.size() < count_) textures_.resize(count_);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    for (std::size_t i = 0; i < count_; ++i)
        upload(textures_[i], discs[i], palette);
}

void GpuDiscs::upload(DiscTexture& to, const ImageDisc& disc, const Palette& palette) {
    BEAMFORK_EXPECTS(disc.light.size() == static_cast<std::size_t>(disc.size) * disc.size);
    BEAMFORK_EXPECTS(disc.lost.empty() || disc.lost.size() == disc.light.size());
    pixels_.resize(disc.light.size());
    std::transform(disc.light.begin(), disc.light.end(), pixels_.begin(),
                   [&](float light) { return palette.of(disc.role) * light; });
    for (std::size_t i = 0; i < disc.lost.size(); ++i)
        pixels_[i] += palette.of(ColourRole::clipped) * disc.lost[i];
    to.centre = disc.centre;
    to.right = disc.right;
    to.up = disc.up;
    if (to.texture.name() == 0) to.texture = smooth_texture();
    glBindTexture(GL_TEXTURE_2D, to.texture.name());
    if (to.size == disc.size) {
        glTexSubImage2D(GL_TEXTURE_2D, 0, 0, 0, disc.size, disc.size, GL_RGB, GL_FLOAT,
                        pixels_.data());
    } else {
        glTexImage2D(GL_TEXTURE_2D, 0, GL_RGB16F, disc.size, disc.size, 0, GL_RGB, GL_FLOAT,
                     pixels_.data());
        to.size = disc.size;
    }
}

}  // namespace beamfork
