// Words in a finished picture, without a graphics card.
#pragma once

#include <array>
#include <string_view>

#include "render/image.hpp"

namespace beamfork {

/// Where words begin: the left end of their baseline, in pixels from the upper left corner of the picture.
struct Baseline {
    double x = 0;
    double y = 0;
};

/// In the program's bold face, its capitals about 0.7 `size` pixels high; red, green, blue as in the picture. What lies
/// beyond the picture's edge is left out. `words` are UTF-8.
void draw_words(Image& image,
                Baseline at,
                std::string_view words,
                double size,
                std::array<std::uint8_t, 3> colour);

/// How wide they are, in pixels.
double width_of_words(std::string_view words, double size);

}  // namespace beamfork
