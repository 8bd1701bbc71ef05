#include "scene/kit/colours.hpp"

#include "base/srgb.hpp"

namespace beamfork {

namespace {

float linear_channel(std::uint32_t byte) {
    return linear_from_srgb(static_cast<float>(byte) / 255.0F);
}

}  // namespace

Rgb linear_rgb(std::uint32_t srgb_hex) {
    return {linear_channel((srgb_hex >> 16U) & 0xFFU), linear_channel((srgb_hex >> 8U) & 0xFFU),
            linear_channel(srgb_hex & 0xFFU)};
}

}  // namespace beamfork
