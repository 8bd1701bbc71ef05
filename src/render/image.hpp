// A finished picture in memory: RGBA, 8 bits, sRGB, upper left pixel first; PNG in and out.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <vector>

#include "base/error.hpp"

namespace beamfork {

struct Image {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;  ///< width * height * 4
    bool operator==(const Image&) const = default;

    /// The pixel in column x, row y (row 0 is the top); both must lie inside.
    [[nodiscard]] std::array<std::uint8_t, 4> at(int x, int y) const;
};

/// `top` laid over `below`, both with colours multiplied by alpha and of one size (T. Porter, T. Duff, "Compositing
/// digital images", SIGGRAPH 1984: the operator over).
Image over(const Image& top, Image below);

/// Colours multiplied by alpha become plain colours beside an alpha, as PNG wants them.
Image straight(Image multiplied);

/// Writes a PNG. The file appears whole or not at all. Errors `not_found`, `no_permission` when it cannot be written.
Result<void> write_png(const Image& image, const std::filesystem::path& path);

/// Reads a PNG of any depth as RGBA. Errors: `not_found`, `bad_input`.
Result<Image> read_png(const std::filesystem::path& path);

/// How far two pictures differ, over all pixels and the three colours, in steps of 0..255.
struct ImageDifference {
    int greatest = 0;
    double mean = 0;
};

/// Error `bad_input` when the sizes differ.
Result<ImageDifference> compare(const Image& a, const Image& b);

/// |a - b| per colour, eight times brighter, to look at; sizes must be equal.
Image difference_picture(const Image& a, const Image& b);

}  // namespace beamfork
