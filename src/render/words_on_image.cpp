#include "render/words_on_image.hpp"

#include <algorithm>
#include <cmath>

#include "base/assets.hpp"
#include "base/contract.hpp"
#include "base/letters.hpp"

#include <stb_truetype.h>

namespace beamfork {

namespace {

const stbtt_fontinfo& bold_face() {
    static const stbtt_fontinfo face = [] {
        const auto bytes = asset("fonts/bold.otf");
        BEAMFORK_EXPECTS(bytes.has_value());
        stbtt_fontinfo info;
        const auto* data = reinterpret_cast<const unsigned char*>(bytes->data());
        BEAMFORK_EXPECTS(stbtt_InitFont(&info, data, stbtt_GetFontOffsetForIndex(data, 0)) != 0);
        return info;
    }();
    return face;
}

// Calls work(glyph, x) for each letter, x in pixels from the words' left end; tells where they end.
template <class Work>
double set_in_line(std::string_view words, float scale, const Work& work) {
    double x = 0;
    int before = 0;
    while (!words.empty()) {
        const std::string_view letter = first_letter(words);
        words.remove_prefix(letter.size());
        const int glyph =
            stbtt_FindGlyphIndex(&bold_face(), static_cast<int>(code_point_of(letter)));
        if (before != 0)
            x +=
                static_cast<double>(scale) * stbtt_GetGlyphKernAdvance(&bold_face(), before, glyph);
        work(glyph, x);
        int advance = 0;
        int bearing = 0;
        stbtt_GetGlyphHMetrics(&bold_face(), glyph, &advance, &bearing);
        x += static_cast<double>(scale) * advance;
        before = glyph;
    }
    return x;
}

float scale_of(double size) {
    return stbtt_ScaleForPixelHeight(&bold_face(), static_cast<float>(size));
}

struct Coverage {
    int width = 0;
    int height = 0;
    int left = 0;  // of its first column, from where the letter stands
    int top = 0;   // of its first row, from the baseline
    unsigned char* share = nullptr;
};

void blend(Image& image, const Coverage& drawn, int x, int y, std::array<std::uint8_t, 3> colour) {
    for (int row = 0; row < drawn.height; ++row) {
        for (int column = 0; column < drawn.width; ++column) {
            const int at_x = x + column;
            const int at_y = y + row;
            if (at_x < 0 || at_x >= image.width || at_y < 0 || at_y >= image.height) continue;
            const int share = drawn.share[row * drawn.width + column];
            const auto first = static_cast<std::size_t>(4 * (at_y * image.width + at_x));
            for (std::size_t i = 0; i < 3; ++i) {
                std::uint8_t& value = image.rgba[first + i];
                value = static_cast<std::uint8_t>(
                    (colour.at(i) * share + value * (255 - share) + 127) / 255);
            }
            image.rgba[first + 3] =
                std::max(image.rgba[first + 3], drawn.share[row * drawn.width + column]);
        }
    }
}

}  // namespace

void draw_words(Image& image,
                Baseline at,
                std::string_view words,
                double size,
                std::array<std::uint8_t, 3> colour) {
    const float scale = scale_of(size);
    set_in_line(words, scale, [&](int glyph, double along) {
        const double x = at.x + along;
        const auto whole = static_cast<int>(std::floor(x));
        Coverage drawn;
        drawn.share = stbtt_GetGlyphBitmapSubpixel(
            &bold_face(), scale, scale, static_cast<float>(x - whole), 0, glyph, &drawn.width,
            &drawn.height, &drawn.left, &drawn.top);
        if (drawn.share == nullptr) return;  // a blank
        blend(image, drawn, whole + drawn.left, static_cast<int>(std::lround(at.y)) + drawn.top,
              colour);
        stbtt_FreeBitmap(drawn.share, nullptr);
    });
}

double width_of_words(std::string_view words, double size) {
    return set_in_line(words, scale_of(size), [](int, double) {});
}

}  // namespace beamfork
