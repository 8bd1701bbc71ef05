#include "scene/tour_motion.hpp"
#include "ui/talk_overlay.hpp"
#include "ui/widgets.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr float row_share = 0.7F;  // of the foot

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
    const float sign = area.height;  // a square at the left for the number, or the mark
    const ImVec2 centre{area.left + sign / 2, area.top + area.height / 2};
    if (mark == AnswerMark::right || mark == AnswerMark::wrong) {
        draw_answer_mark(list, mark, centre, sign * 0.25F, ink.frame);
    } else {
        const std::string number = std::to_string(answer + 1);
        const ImVec2 wide = face.CalcTextSizeA(letters, FLT_MAX, 0, number.c_str());
        list.AddCircle(centre, sign * 0.34F, ink.frame, 48, std::max(1.5F, sign * 0.03F));
        list.AddText(&face, letters, {centre.x - wide.x / 2, centre.y - wide.y / 2}, ink.text,
                     number.c_str());
    }
    const float margin = area.height * 0.12F;
    const FittedWords fit =
        fitted(words.asked->answers[answer], {area.width - sign - 2 * margin, area.height - margin},
               face, letters);
    list.AddText(&face, fit.size, {area.left + sign, area.top + (area.height - fit.height) / 2},
                 ink.text, fit.lines.c_str());
    if (words.chosen != answer) return;
    const std::string whose = "the room's choice";
    const float small = letters * 0.5F;
    const float wide = face.CalcTextSizeA(small, FLT_MAX, 0, whose.c_str()).x;
    const ImVec2 at{high.x - wide - 2 * margin, area.top - small * 0.62F};
    list.AddRectFilled({at.x - margin, at.y - 1}, {at.x + wide + margin, at.y + small + 1},
                       ink.frame, small * 0.4F);
    list.AddText(&face, small, at, colour(Tone::ground), whose.c_str());
}

}  // namespace

float answers_foot(const TalkLayout& layout) { return answers_share * layout.picture_height; }

std::vector<Area> answer_areas(const TalkLayout& layout, std::size_t count) {
    const float foot = answers_foot(layout);
    const float bottom = layout.title_height + layout.picture_height;
    const float gap = layout.margin;
    const auto columns = static_cast<float>(count);
    const float width = (layout.caption_width - (columns - 1) * gap) / columns;
    std::vector<Area> areas;
    for (std::size_t i = 0; i < count; ++i) {
        areas.push_back({layout.margin + static_cast<float>(i) * (width + gap),
                         bottom - foot * (1 + row_share) / 2, width, foot * row_share});
    }
    return areas;
}

void draw_talk_answers(ImDrawList& list,
                       ImVec2 size,
                       const TalkWords& words,
                       std::optional<std::size_t> hot) {
    if (!words.asked) return;
    const TalkLayout layout = talk_layout(size.x, size.y);
    const std::vector<Area> areas = answer_areas(layout, words.asked->answers.size());
    for (std::size_t i = 0; i < areas.size(); ++i)
        draw_answer(list, areas[i], layout.caption_size, words, i, hot == i);
}

}  // namespace beamfork
