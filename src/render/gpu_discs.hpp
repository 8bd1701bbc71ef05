// Field-stop images on the graphics card: one small texture each.
#pragma once

#include <span>
#include <vector>

#include "render/gl_object.hpp"
#include "render/palette.hpp"
#include "scene/picture/frame.hpp"

namespace beamfork {

/// One image and where it stands.
struct DiscTexture {
    Texture texture;
    int size = 0;
    glm::vec3 centre{0};
    glm::vec3 right{1, 0, 0};
    glm::vec3 up{0, 1, 0};
};

class GpuDiscs {
public:
    void upload(const std::vector<ImageDisc>& discs, const Palette& palette);
    [[nodiscard]] std::span<const DiscTexture> all() const {
        return std::span(textures_).first(count_);
    }

private:
    void upload(DiscTexture& to, const ImageDisc& disc, const Palette& palette);

    std::vector<DiscTexture> textures_;  // kept for later, though the Frame has fewer
    std::size_t count_ = 0;
    std::vector<Rgb> pixels_;
};

}  // namespace beamfork
