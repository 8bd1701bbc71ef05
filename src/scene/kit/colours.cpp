#include "scene/kit/colours.hpp"

#include <cmath>

namespace beamfork {

namespace {

// IEC 61966-2-1:1999 (sRGB), the decoding curve.
float linear_channel(std::uint32_t byte) {
    const float encoded = static_cast<float>(byte) / 255.0F;
    return encoded <= 0.04045F ? encoded / 12.92F : std::pow((encoded + 0.055F) / 1.055F, 2.4F);
}

}  // namespace

Rgb linear_rgb(std::uint32_t srgb_hex) {
    return {linear_channel((srgb_hex >> 16U) & 0xFFU), linear_channel((srgb_hex >> 8U) & 0xFFU),
            linear_channel(srgb_hex & 0xFFU)};
}

}  // namespace beamfork
