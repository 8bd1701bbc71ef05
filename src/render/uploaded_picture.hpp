// A picture made elsewhere, on the graphics card for the window to show: sRGB bytes, first row at v = 0.
#pragma once

#include <cstdint>
#include <span>

#include "render/gl_object.hpp"

namespace beamfork {

class UploadedPicture {
public:
    /// Replaces what was there. Needs a current context; `rgba` has width * height * 4 bytes.
    void upload(int width, int height, std::span<const std::uint8_t> rgba);
    /// The same for a picture that will be shown much smaller than it is.
    void upload_to_shrink(int width, int height, std::span<const std::uint8_t> rgba);
    /// 0 before the first upload.
    [[nodiscard]] GLuint name() const { return texture_.name(); }

private:
    Texture texture_;
};

}  // namespace beamfork
