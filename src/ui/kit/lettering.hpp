// Text in panels: drawn at a place, measured, cut, broken into lines and made to fit.
#pragma once

#include <string>
#include <string_view>

#include "ui/kit/theme.hpp"

namespace beamfork {

void text_at(ImDrawList& list,
             ImVec2 at,
             std::string_view text,
             ImU32 ink,
             TextFace face = TextFace::regular);

/// Text that ends at x = `right` (screen), in the line at `y`.
void text_ending_at(ImDrawList& list,
                    ImVec2 right_top,
                    std::string_view text,
                    ImU32 ink,
                    TextFace face = TextFace::regular);

float text_width(std::string_view text, TextFace face = TextFace::regular);

ImVec2 text_size(std::string_view text, TextFace face = TextFace::regular);

/// Text that ends in "…" where it would be wider than `width`.
std::string shortened(std::string_view text, float width);

void dim_text(std::string_view text);

/// In lines no wider than the panel, as `folded`.
void wrapped_text(std::string_view text, ImU32 ink);

/// Broken into lines of at most `width` pixels in the present font, between words alone and not before a number's unit.
/// The library's own wrapping also breaks behind the point in a number.
std::string folded(std::string_view text, float width);

/// The same in that face and size. A word that is wider than a line is broken between its letters.
std::string folded(std::string_view text, float width, ImFont& face, float size);

/// Words in lines with the size at which they fill no more than a box.
struct FittedWords {
    std::string lines;
    float size = 0;  ///< of the letters, pixels
    float height = 0;
};

/// As large as `largest`, or as much smaller as it takes.
FittedWords fitted(std::string_view text, ImVec2 box, ImFont& face, float largest);

}  // namespace beamfork
