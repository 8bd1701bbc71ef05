// What the room reads in a talk: the tour's title, which step this is, the caption in large type below the picture, and
// what it is asked with the answers to choose from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/tour/tour_frame.hpp"
#include "ui/kit/area.hpp"

#include <imgui.h>

namespace beamfork {

struct TalkWords {
    std::string title;
    std::string caption;
    int step = 1;  ///< from 1
    int steps = 1;
    std::optional<AskedQuestion> asked{};
    bool is_revealed = true;              ///< the answer is told, else the question is asked
    std::optional<std::size_t> chosen{};  ///< by the room; needs `asked`
};
TalkWords talk_words(const TourFrame& shown);

/// Where things stand on a screen of that size, in pixels. The picture has the whole width above the caption's band.
struct TalkLayout {
    float title_height = 0;
    float picture_height = 0;  ///< below the title
    float band_height = 0;     ///< below the picture
    float caption_size = 0;    ///< height of the caption's letters' lines, unless it is too long
    float caption_width = 0;   ///< at which it is wrapped
    float margin = 0;
};
TalkLayout talk_layout(float width, float height);

/// Width to height of a talk's picture on a screen of that size.
float talk_aspect(int width, int height);

/// The scale for the theme at which a talk's letters are drawn without being enlarged.
float talk_scale(float height);

/// What the room has to read now: the question while it is asked, else the caption.
const std::string& newest_words(const TalkWords& words);

/// Height of the caption once wrapped, in pixels, and how much there is for it; its letters are made smaller until it
/// fits. Needs a frame of the interface.
float caption_height(const TalkWords& words, const TalkLayout& layout);
float caption_room(const TalkLayout& layout);

/// The foot of the picture to which the answers go once the right one is told: no name goes there.
float asked_foot(const TalkLayout& layout);
/// Where the question stands, in the caption's band, and below it the answers, side by side, from left to right; on the
/// screen. Once it is told the band is the caption's.
Area question_area(const TalkLayout& layout);
std::vector<Area> answer_areas(const TalkLayout& layout, std::size_t count, bool is_revealed);

void draw_talk_overlay(ImDrawList& list,
                       ImVec2 size,
                       const TalkWords& words,
                       std::optional<std::size_t> hot_answer = {});
/// Question and answers (talk_answers.cpp). `hot`: under the pointer. Once revealed the right one
/// bears a tick, the chosen one that is wrong a cross.
void draw_talk_question(ImDrawList& list,
                        ImVec2 size,
                        const TalkWords& words,
                        std::optional<std::size_t> hot = {});

}  // namespace beamfork
