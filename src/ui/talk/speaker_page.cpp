#include "ui/talk/speaker_page.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <vector>

#include "ui/kit/lettering.hpp"

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

struct SpeakerParagraph {
    std::string words;
    float letters;  // of the page's
    ImU32 ink;
    bool has_line = false;  // a rule below it
};

std::string question_in_words(const AskedQuestion& asked) {
    std::string words = "The room is asked: " + asked.question;
    for (std::size_t i = 0; i < asked.answers.size(); ++i)
        words +=
            fmt::format("\n{}  {}{}", i + 1, asked.answers[i], asked.right == i ? "  (right)" : "");
    return asked.right ? words : words + "\nNone is right: it is " + asked.truth;
}

std::vector<SpeakerParagraph> paragraphs_of(const SpeakerPage& page, const SpeakerInk& ink) {
    std::vector<SpeakerParagraph> all;
    if (page.notes.empty()) {
        all.push_back({"No notes for this step.", 1.2F, ink.dim, true});
    } else {
        all.push_back({page.notes, 1.2F, ink.text, true});
    }
    if (page.words.asked) all.push_back({question_in_words(*page.words.asked), 0.95F, ink.text});
    all.push_back({"The room reads: " + page.words.caption, 0.85F, ink.dim});
    all.push_back(
        {page.next.empty() ? "This is the last step." : "Next: " + page.next, 0.85F, ink.dim});
    return all;
}

// All of them from `y` on, in letters of that size; where they end. Draws nothing without a list.
float lay_paragraphs(ImDrawList* list,
                     const std::vector<SpeakerParagraph>& all,
                     ImVec2 from,
                     float width,
                     float letters) {
    ImFont* face = font(TextFace::large);
    float y = from.y;
    for (const SpeakerParagraph& one : all) {
        const float size = one.letters * letters;
        const std::string lines = folded(one.words, width, *face, size);
        if (list != nullptr) list->AddText(face, size, {from.x, y}, one.ink, lines.c_str());
        y += face->CalcTextSizeA(size, FLT_MAX, 0, lines.c_str()).y + letters * 0.7F;
        if (!one.has_line) continue;
        if (list != nullptr) list->AddLine({from.x, y}, {from.x + width, y}, one.ink);
        y += letters * 0.7F;
    }
    return y;
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

    const auto all = paragraphs_of(page, ink);
    const ImVec2 from{margin, margin + clock_size + letters / 2};
    float small = letters;  // much to say is said in smaller letters, none of it is lost
    constexpr float least = 6;
    while (small > least && lay_paragraphs(nullptr, all, from, width, small) > size.y)
        small *= 0.94F;
    lay_paragraphs(&list, all, from, width, small);
}

}  // namespace beamfork
