#include "base/base64.hpp"

#include <string_view>

namespace beamfork {

std::string base64(std::span<const std::uint8_t> bytes) {
    constexpr std::string_view letters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    text.reserve((bytes.size() + 2) / 3 * 4);
    for (std::size_t at = 0; at < bytes.size(); at += 3) {
        const auto byte = [&](std::size_t i) -> std::uint32_t {
            return at + i < bytes.size() ? bytes[at + i] : 0;
        };
        const std::uint32_t three = byte(0) << 16U | byte(1) << 8U | byte(2);
        for (std::size_t i = 0; i < 4; ++i) {
            const bool is_padding = at + i > bytes.size();
            text += is_padding ? '=' : letters[three >> (18 - 6 * i) & 63U];
        }
    }
    return text;
}

}  // namespace beamfork
