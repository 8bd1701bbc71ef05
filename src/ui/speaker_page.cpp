#include "ui/speaker_page.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>

#include "ui/theme.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

struct SpeakerInk {
    ImU32 ground;
    ImU32 text;
    ImU32 dim;
};

SpeakerInk speaker_ink(bool night) {
    if (night) return {IM_COL32(0, 0, 0, 255), IM_COL32(200, 0, 0, 255), IM_COL32(140, 0, 0, 255)};
    return {colour(Tone::ground), colour(Tone::text), colour(Tone::text_dim)};
}

float wrapped_height(const std::string& words, float size, float width) {
    return font(TextFace::large)->CalcTextSizeA(size, FLT_MAX, width, words.c_str()).y;
}

}  // namespace

std::string clock_text(double seconds) {
    const auto whole = static_cast<long>(std::floor(std::max(0.0, seconds)));
    const long minutes = whole / 60;
    if (minutes < 60) return fmt::format("{}:{:02}", minutes, whole % 60);
    return fmt::format("{}:{:02}:{:02}", minutes / 60, minutes % 60, whole % 60);
}

void draw_speaker_page(ImDrawList& list, ImVec2 size, const SpeakerPage& page) {
    const SpeakerInk ink = speaker_ink(page.night);
    ImFont* face = font(TextFace::large);
    // Notes are read at arm's length: 19 lines a page, and lines of 44 letters or so where the window is narrow.
    const float letters = std::min(size.y / 19, size.x / 24);
    const float margin = letters;
    const float width = size.x - 2 * margin;
    list.AddRectFilled({0, 0}, size, ink.ground);
    const std::string clock = clock_text(page.elapsed_s);
    const float clock_size = 2 * letters;
    list.AddText(face, clock_size, {margin, margin / 2}, ink.text, clock.c_str());
    const std::string step = fmt::format("step {} of {}", page.words.step, page.words.steps);
    const float step_width = face->CalcTextSizeA(letters, FLT_MAX, 0, step.c_str()).x;
    list.AddText(face, letters, {size.x - margin - step_width, margin}, ink.dim, step.c_str());

    float y = margin + clock_size + letters / 2;
    const auto paragraph = [&](const std::string& words, float letter, ImU32 tone) {
        list.AddText(face, letter, {margin, y}, tone, words.c_str(), nullptr, width);
        y += wrapped_height(words, letter, width) + letters * 0.7F;
    };
    paragraph(page.notes.empty() ? "No notes for this step." : page.notes, letters * 1.2F,
              page.notes.empty() ? ink.dim : ink.text);
    list.AddLine({margin, y}, {size.x - margin, y}, ink.dim);
    y += letters * 0.7F;
    paragraph("The room reads: " + page.words.caption, letters * 0.85F, ink.dim);
    paragraph(page.next.empty() ? "This is the last step." : "Next: " + page.next, letters * 0.85F,
              ink.dim);
}

}  // namespace beamfork
