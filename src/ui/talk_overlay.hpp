// What the room reads in a talk: the tour's title, which step this is, and the caption in large type below the picture.
#pragma once

#include <string>

#include <imgui.h>

namespace beamfork {

struct TalkWords {
    std::string title;
    std::string caption;
    int step = 1;  ///< from 1
    int steps = 1;
};

/// Where things stand on a screen of that size, in pixels. The picture has the whole width above the caption's band.
struct TalkLayout {
    float title_height = 0;
    float picture_height = 0;  ///< below the title
    float band_height = 0;     ///< below the picture
    float caption_size = 0;    ///< height of the caption's letters' lines
    float caption_width = 0;   ///< at which it is wrapped
    float margin = 0;
};
TalkLayout talk_layout(float width, float height);

/// Width to height of a talk's picture on a screen of that size.
float talk_aspect(int width, int height);

/// The scale for the theme at which a talk's letters are drawn without being enlarged.
float talk_scale(float height);

/// Height of the caption once wrapped, in pixels; needs a frame of the interface.
float caption_height(const TalkWords& words, const TalkLayout& layout);

void draw_talk_overlay(ImDrawList& list, ImVec2 size, const TalkWords& words);

}  // namespace beamfork
