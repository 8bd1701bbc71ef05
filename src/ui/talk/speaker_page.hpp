// What the speaker alone sees: notes in large type, the time since the talk began, what comes next.
#pragma once

#include <string>

#include "ui/talk/talk_overlay.hpp"

#include <imgui.h>

namespace beamfork {

struct SpeakerPage {
    TalkWords words;    ///< what the room reads
    std::string notes;  ///< of this step; may be empty
    std::string next;   ///< caption of the step to come; empty: this is the last
    double elapsed_s = 0;
    bool night = false;  ///< red on black
};

/// "7:05" and, from an hour on, "1:02:33".
std::string clock_text(double seconds);

/// Fills a window of that size, in pixels, with a list of its own; needs a frame of the interface for its letters.
void draw_speaker_page(ImDrawList& list, ImVec2 size, const SpeakerPage& page);

}  // namespace beamfork
