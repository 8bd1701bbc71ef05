#include "render/uploaded_picture.hpp"

#include "base/contract.hpp"

namespace beamfork {

void UploadedPicture::upload(int width, int height, std::span<const std::uint8_t> rgba) {
    BEAMFORK_EXPECTS(rgba.size() == static_cast<std::size_t>(width) * height * 4);
    if (texture_.name() == 0) texture_ = Texture::create();
    glBindTexture(GL_TEXTURE_2D, texture_.name());
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 rgba.data());
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glBindTexture(GL_TEXTURE_2D, 0);
}

void UploadedPicture::upload_to_shrink(int width, int height, std::span<const std::uint8_t> rgba) {
    upload(width, height, rgba);
    glBindTexture(GL_TEXTURE_2D, texture_.name());
    glGenerateMipmap(GL_TEXTURE_2D);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
    glBindTexture(GL_TEXTURE_2D, 0);
}

}  // namespace beamfork
