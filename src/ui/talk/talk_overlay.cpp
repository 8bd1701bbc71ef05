#include "ui/talk/talk_overlay.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>

#include "ui/kit/lettering.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Shares of the picture's height. Lines of a 20th can be read from the back row at eight picture
// heights (common practice for slides, no source).
constexpr float caption_line_share = 1.0F / 20;
constexpr float title_share = 0.09F;
constexpr float band_share = 0.22F;
constexpr float margin_share = 0.03F;

}  // namespace

TalkLayout talk_layout(float width, float height) {
    TalkLayout layout;
    layout.title_height = title_share * height;
    layout.band_height = band_share * height;
    layout.picture_height = height - layout.title_height - layout.band_height;
    layout.caption_size = caption_line_share * height;
    layout.margin = margin_share * height;
    layout.caption_width = width - 2 * layout.margin;
    return layout;
}

float talk_aspect(int width, int height) {
    const TalkLayout layout = talk_layout(static_cast<float>(width), static_cast<float>(height));
    return static_cast<float>(width) / std::max(1.0F, std::floor(layout.picture_height));
}

float talk_scale(float height) {
    constexpr float lines_at_scale_1 = 720;  // names beside the picture as large as half a caption
    return height / lines_at_scale_1 * 1.4F;
}

TalkWords talk_words(const TourFrame& shown) {
    return {shown.title, shown.caption, shown.step, shown.steps, shown.asked};
}

const std::string& newest_words(const TalkWords& words) {
    return words.asked && !words.is_revealed ? words.asked->question : words.caption;
}

float caption_room(const TalkLayout& layout) { return layout.band_height - layout.margin; }

namespace {

FittedWords fitted_band(const TalkWords& words, const TalkLayout& layout) {
    return fitted(words.caption, {layout.caption_width, caption_room(layout)},
                  *font(TextFace::large), layout.caption_size);
}

}  // namespace

float caption_height(const TalkWords& words, const TalkLayout& layout) {
    return fitted_band(words, layout).height;
}

void draw_talk_overlay(ImDrawList& list,
                       ImVec2 size,
                       const TalkWords& words,
                       std::optional<std::size_t> hot_answer) {
    const TalkLayout layout = talk_layout(size.x, size.y);
    const ImU32 ink = colour(Tone::text);
    ImFont* face = font(TextFace::large);
    list.AddRectFilled({0, 0}, {size.x, layout.title_height}, colour(Tone::ground));
    const std::string step = fmt::format("step {} of {}", words.step, words.steps);
    const float step_width = face->CalcTextSizeA(layout.caption_size, FLT_MAX, 0, step.c_str()).x;
    const float title_y = (layout.title_height - layout.caption_size) / 2;
    list.AddText(face, layout.caption_size, {size.x - layout.margin - step_width, title_y},
                 colour(Tone::text_dim), step.c_str());
    const float title_width = size.x - 3 * layout.margin - step_width;
    const FittedWords title =
        fitted(words.title, {title_width, layout.title_height}, *face, layout.caption_size);
    list.AddText(face, title.size, {layout.margin, (layout.title_height - title.height) / 2}, ink,
                 title.lines.c_str());
    const float band_top = size.y - layout.band_height;
    list.AddRectFilled({0, band_top}, size, colour(Tone::ground));
    draw_talk_question(list, size, words, hot_answer);
    if (words.asked && !words.is_revealed) return;
    const FittedWords band = fitted_band(words, layout);
    const float caption_y = band_top + (layout.band_height - band.height) / 2;
    list.AddText(face, band.size, {layout.margin, caption_y}, ink, band.lines.c_str());
}

}  // namespace beamfork
