#include "render/png_codec.hpp"

#include <cstddef>
#include <limits>

#include <stb_image.h>
#include <stb_image_write.h>

namespace beamfork {

std::vector<std::uint8_t> encode_png(const Image& image) {
    std::vector<std::uint8_t> bytes;
    const auto append = [](void* to, void* data, int size) {
        const auto* first = static_cast<const std::uint8_t*>(data);
        auto& out = *static_cast<std::vector<std::uint8_t>*>(to);
        out.insert(out.end(), first, first + size);
    };
    stbi_write_png_to_func(append, &bytes, image.width, image.height, 4, image.rgba.data(),
                           4 * image.width);
    return bytes;
}

std::optional<Image> decode_png(std::span<const std::uint8_t> bytes) {
    if (bytes.size() > static_cast<std::size_t>(std::numeric_limits<int>::max())) {
        return std::nullopt;
    }
    Image image;
    int channels = 0;
    stbi_uc* const pixels = stbi_load_from_memory(bytes.data(), static_cast<int>(bytes.size()),
                                                  &image.width, &image.height, &channels, 4);
    if (pixels == nullptr) return std::nullopt;
    const std::size_t size = static_cast<std::size_t>(image.width) * image.height * 4;
    image.rgba.assign(pixels, pixels + size);
    stbi_image_free(pixels);
    return image;
}

}  // namespace beamfork
