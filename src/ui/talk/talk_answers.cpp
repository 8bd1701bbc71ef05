#include <algorithm>

#include "scene/tour/tour_motion.hpp"
#include "ui/kit/area.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/talk/talk_overlay.hpp"

namespace beamfork {

namespace {

// Of the caption's band while it is asked, from its top: the question and the answers.
constexpr float question_top = 0.08F;
constexpr float question_share = 0.38F;
constexpr float row_top = 0.52F;
constexpr float row_share = 0.38F;
// Of the picture's foot once it is told.
constexpr float told_row_top = 0.2F;
constexpr float told_row_share = 0.76F;

enum class AnswerMark { none, right, wrong, past };

AnswerMark mark_of(const TalkWords& words, std::size_t answer) {
    if (!words.is_revealed) return AnswerMark::none;
    if (words.asked->right == answer) return AnswerMark::right;
    return words.chosen == answer ? AnswerMark::wrong : AnswerMark::past;
}

// A tick or a cross of that half size; told apart by shape, not by colour alone.
void draw_answer_mark(ImDrawList& list, AnswerMark mark, ImVec2 centre, float half, ImU32 ink) {
    const auto at = [&](float x, float y) {
        return ImVec2{centre.x + x * half, centre.y + y * half};
    };
    const float width = half * 0.4F;
    if (mark == AnswerMark::right) {
        list.PathLineTo(at(-0.8F, 0));
        list.PathLineTo(at(-0.2F, 0.65F));
        list.PathLineTo(at(0.85F, -0.65F));
        list.PathStroke(ink, 0, width);
        return;
    }
    list.AddLine(at(-0.65F, -0.65F), at(0.65F, 0.65F), ink, width);
    list.AddLine(at(0.65F, -0.65F), at(-0.65F, 0.65F), ink, width);
}

struct AnswerInk {
    ImU32 ground;
    ImU32 frame;
    ImU32 text;
    float frame_share;  // of the row's height
};

AnswerInk answer_ink(AnswerMark mark, bool is_hot) {
    switch (mark) {
    case AnswerMark::right:
        return {colour(Tone::panel, 0.95F), text_colour(ColourRole::good), colour(Tone::text),
                0.06F};
    case AnswerMark::wrong:
        return {colour(Tone::panel, 0.95F), text_colour(ColourRole::clipped), colour(Tone::text),
                0.06F};
    case AnswerMark::past:
        return {colour(Tone::panel, 0.7F), colour(Tone::line, 0.7F), colour(Tone::text, 0.5F),
                0.02F};
    case AnswerMark::none: break;
    }
    return {colour(is_hot ? Tone::raised_hot : Tone::raised, 0.95F), colour(Tone::text_dim),
            colour(Tone::text), 0.02F};
}

// A square at the left of an answer for its number, or its mark; what is left for its words.
ImVec2 words_box(const Area& area) {
    const float margin = area.height * 0.12F;
    return {area.width - area.height - 2 * margin, area.height - margin};
}

// At which all answers fit: one that is in smaller letters would look less true.
float answer_letters(const TalkWords& words, const Area& area, float largest) {
    float letters = largest;
    for (const std::string& answer : words.asked->answers)
        letters = std::min(letters,
                           fitted(answer, words_box(area), *font(TextFace::large), largest).size);
    return letters;
}

void draw_choice_tag(ImDrawList& list, const Area& area, float letters, ImU32 ink) {
    ImFont& face = *font(TextFace::large);
    const std::string whose = "the room's choice";
    const float small = letters * 0.55F;
    const float margin = small * 0.4F;
    const float wide = face.CalcTextSizeA(small, FLT_MAX, 0, whose.c_str()).x;
    const ImVec2 at{area.right() - wide - 3 * margin, area.top - small * 0.6F};
    list.AddRectFilled({at.x - margin, at.y - 1}, {at.x + wide + margin, at.y + small + 1}, ink,
                       small * 0.4F);
    list.AddText(&face, small, at, colour(Tone::ground), whose.c_str());
}

void draw_answer(ImDrawList& list,
                 const Area& area,
                 float letters,
                 const TalkWords& words,
                 std::size_t answer,
                 bool is_hot) {
    const AnswerMark mark = mark_of(words, answer);
    const AnswerInk ink = answer_ink(mark, is_hot);
    const ImVec2 high{area.right(), area.bottom()};
    const float rounding = area.height * 0.16F;
    list.AddRectFilled(area.corner(), high, ink.ground, rounding);
    list.AddRect(area.corner(), high, ink.frame, rounding, 0,
                 std::max(1.5F, ink.frame_share * area.height));
    ImFont& face = *font(TextFace::large);
    const float sign = area.height;
    const ImVec2 centre{area.left + sign / 2, area.top + area.height / 2};
    if (mark == AnswerMark::right || mark == AnswerMark::wrong) {
        draw_answer_mark(list, mark, centre, sign * 0.25F, ink.frame);
    } else {
        const std::string number = std::to_string(answer + 1);
        const float size = sign * 0.5F;
        const ImVec2 wide = face.CalcTextSizeA(size, FLT_MAX, 0, number.c_str());
        list.AddCircle(centre, sign * 0.34F, ink.frame, 48, std::max(1.5F, sign * 0.03F));
        list.AddText(&face, size, {centre.x - wide.x / 2, centre.y - wide.y / 2}, ink.text,
                     number.c_str());
    }
    const FittedWords fit = fitted(words.asked->answers[answer], words_box(area), face, letters);
    list.AddText(&face, fit.size, {area.left + sign, area.top + (area.height - fit.height) / 2},
                 ink.text, fit.lines.c_str());
    if (words.chosen == answer) draw_choice_tag(list, area, letters, ink.frame);
}

}  // namespace

float asked_foot(const TalkLayout& layout) { return asked_share * layout.picture_height; }

Area question_area(const TalkLayout& layout) {
    const float band = layout.title_height + layout.picture_height;
    return {layout.margin, band + question_top * layout.band_height, layout.caption_width,
            question_share * layout.band_height};
}

std::vector<Area> answer_areas(const TalkLayout& layout, std::size_t count, bool is_revealed) {
    const float band = layout.title_height + layout.picture_height;
    const float foot = asked_foot(layout);
    const float top =
        is_revealed ? band - foot + told_row_top * foot : band + row_top * layout.band_height;
    const float height = is_revealed ? told_row_share * foot : row_share * layout.band_height;
    const auto columns = static_cast<float>(count);
    const float width = (layout.caption_width - (columns - 1) * layout.margin) / columns;
    std::vector<Area> areas;
    for (std::size_t i = 0; i < count; ++i) {
        areas.push_back(
            {layout.margin + static_cast<float>(i) * (width + layout.margin), top, width, height});
    }
    return areas;
}

void draw_talk_question(ImDrawList& list,
                        ImVec2 size,
                        const TalkWords& words,
                        std::optional<std::size_t> hot) {
    if (!words.asked) return;
    const TalkLayout layout = talk_layout(size.x, size.y);
    const std::vector<Area> areas =
        answer_areas(layout, words.asked->answers.size(), words.is_revealed);
    if (words.is_revealed) {
        const float bottom = layout.title_height + layout.picture_height;
        list.AddRectFilled({0, bottom - asked_foot(layout)}, {size.x, bottom + 1},
                           colour(Tone::ground));
    } else {
        const Area place = question_area(layout);
        ImFont& face = *font(TextFace::large);
        const FittedWords question =
            fitted(words.asked->question, {place.width, place.height}, face, layout.caption_size);
        list.AddText(&face, question.size,
                     {place.left, place.top + (place.height - question.height) / 2},
                     colour(Tone::text), question.lines.c_str());
    }
    const float letters = answer_letters(words, areas.front(), layout.caption_size);
    for (std::size_t i = 0; i < areas.size(); ++i)
        draw_answer(list, areas[i], letters, words, i, hot == i);
}

}  // namespace beamfork
