#include "base/shown.hpp"

#include <algorithm>
#include <array>

#include "base/letters.hpp"

#include <fmt/format.h>
#include <utf8.h>

namespace beamfork {

namespace {

struct Stretch {
    char32_t first;
    char32_t last;
};

// Of The Unicode Standard 15.0: general category Cc, the format characters (Cf) that turn, join or hide, the breaks of
// lines and paragraphs (Zl, Zp), and tags. In order.
constexpr std::array unseen{
    Stretch{0x0000, 0x001F},   Stretch{0x007F, 0x009F},   // controls
    Stretch{0x00AD, 0x00AD},                              // soft hyphen
    Stretch{0x034F, 0x034F},                              // joiner of graphemes
    Stretch{0x061C, 0x061C},   Stretch{0x115F, 0x1160},   // direction; fillers without ink
    Stretch{0x180E, 0x180E},   Stretch{0x200B, 0x200F},   // no width; direction
    Stretch{0x2028, 0x202E},   Stretch{0x2060, 0x206F},   // breaks, direction; no width, direction
    Stretch{0x3164, 0x3164},   Stretch{0xFEFF, 0xFEFF},   // filler; byte order mark
    Stretch{0xFFA0, 0xFFA0},   Stretch{0xFFF9, 0xFFFB},   // filler; notes between lines
    Stretch{0x1D173, 0x1D17A}, Stretch{0xE0000, 0xE007F}  // beams of music; tags
};

bool is_unseen(char32_t letter) {
    return std::any_of(unseen.begin(), unseen.end(), [&](const Stretch& stretch) {
        return stretch.first <= letter && letter <= stretch.last;
    });
}

std::string escaped(char32_t letter) {
    const auto code = static_cast<std::uint32_t>(letter);
    if (code <= 0xFFFF) return fmt::format("\\u{:04X}", code);
    const std::uint32_t rest = code - 0x10000;
    return fmt::format("\\u{:04X}\\u{:04X}", 0xD800 + (rest >> 10U), 0xDC00 + (rest & 0x3FFU));
}

std::string without_unseen(std::string_view text, bool keeps_lines) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const std::string_view letter = first_letter(text);  // plain letters are most of any text
        text.remove_prefix(letter.size());
        if (!utf8::is_valid(letter.begin(), letter.end())) {
            out += fmt::format("\\x{:02X}", static_cast<unsigned char>(letter.front()));
            continue;
        }
        const auto code = static_cast<char32_t>(utf8::peek_next(letter.begin(), letter.end()));
        const bool stays = (keeps_lines && (code == U'\n' || code == U'\t')) || !is_unseen(code);
        out += stays ? std::string(letter) : escaped(code);
    }
    return out;
}

}  // namespace

std::string shown(std::string_view text) { return without_unseen(text, true); }

std::string shown_in_line(std::string_view text) { return without_unseen(text, false); }

}  // namespace beamfork
