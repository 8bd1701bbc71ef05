// PNG bytes from and to pictures; the one place that holds the stb implementation.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "render/image.hpp"

namespace beamfork {

std::vector<std::uint8_t> encode_png(const Image& image);

/// Nothing when the bytes are no PNG or are larger than 16384 pixels a side.
std::optional<Image> decode_png(std::span<const std::uint8_t> bytes);

}  // namespace beamfork
