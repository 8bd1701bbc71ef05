// Bytes as text, where a page must hold a picture: RFC 4648, section 4.
#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace beamfork {

std::string base64(std::span<const std::uint8_t> bytes);

}  // namespace beamfork
