#include "render/image.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <system_error>

#include "base/contract.hpp"
#include "document/atomic_file.hpp"
#include "render/png_codec.hpp"

namespace beamfork {

std::array<std::uint8_t, 4> Image::at(int x, int y) const {
    BEAMFORK_EXPECTS(x >= 0 && x < width && y >= 0 && y < height);
    const auto first = rgba.begin() + 4 * (static_cast<std::ptrdiff_t>(y) * width + x);
    return {first[0], first[1], first[2], first[3]};
}

Image over(const Image& top, Image below) {
    BEAMFORK_EXPECTS(top.width == below.width && top.height == below.height);
    for (std::size_t pixel = 0; pixel < top.rgba.size(); pixel += 4) {
        const unsigned through = 255U - top.rgba[pixel + 3];
        for (std::size_t i = pixel; i < pixel + 4; ++i) {
            const unsigned sum = top.rgba[i] + (through * below.rgba[i] + 127U) / 255U;
            below.rgba[i] = static_cast<std::uint8_t>(std::min(sum, 255U));
        }
    }
    return below;
}

Image straight(Image multiplied) {
    for (std::size_t pixel = 0; pixel < multiplied.rgba.size(); pixel += 4) {
        const unsigned alpha = multiplied.rgba[pixel + 3];
        if (alpha == 0 || alpha == 255) continue;
        for (std::size_t i = pixel; i < pixel + 3; ++i) {
            const unsigned plain = (multiplied.rgba[i] * 255U + alpha / 2) / alpha;
            multiplied.rgba[i] = static_cast<std::uint8_t>(std::min(plain, 255U));
        }
    }
    return multiplied;
}

Result<void> write_png(const Image& image, const std::filesystem::path& path) {
    const std::vector<std::uint8_t> bytes = encode_png(image);
    return replace_file(path, {reinterpret_cast<const char*>(bytes.data()), bytes.size()});
}

Result<Image> read_png(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in) return fail(ErrorCode::not_found, "no picture to read", {path.string(), 0});
    const std::vector<char> text{std::istreambuf_iterator<char>(in), {}};
    auto image = decode_png({reinterpret_cast<const std::uint8_t*>(text.data()), text.size()});
    if (!image) return fail(ErrorCode::bad_input, "not a PNG picture", {path.string(), 0});
    return *std::move(image);
}

Result<ImageDifference> compare(const Image& a, const Image& b) {
    if (a.width != b.width || a.height != b.height) {
        return fail(ErrorCode::bad_input, "pictures of different size: " + std::to_string(a.width)
                                              + " x " + std::to_string(a.height) + " and "
                                              + std::to_string(b.width) + " x "
                                              + std::to_string(b.height));
    }
    ImageDifference difference;
    double sum = 0;
    for (std::size_t i = 0; i < a.rgba.size(); ++i) {
        if (i % 4 == 3) continue;
        const int apart = std::abs(int{a.rgba[i]} - int{b.rgba[i]});
        difference.greatest = std::max(difference.greatest, apart);
        sum += apart;
    }
    if (!a.rgba.empty()) difference.mean = sum / (0.75 * static_cast<double>(a.rgba.size()));
    return difference;
}

Image difference_picture(const Image& a, const Image& b) {
    BEAMFORK_EXPECTS(a.width == b.width && a.height == b.height);
    Image shown = a;
    for (std::size_t i = 0; i < a.rgba.size(); ++i) {
        const int apart = i % 4 == 3 ? 255 : 8 * std::abs(int{a.rgba[i]} - int{b.rgba[i]});
        shown.rgba[i] = static_cast<std::uint8_t>(std::min(apart, 255));
    }
    return shown;
}

}  // namespace beamfork
