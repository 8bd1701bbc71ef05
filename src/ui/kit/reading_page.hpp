// A page of short paragraphs over the window, to be read and closed.
#pragma once

#include <span>

#include "scene/words/assumptions.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

struct ReadingPage {
    const char* title;  ///< as ImGui::OpenPopup was told
    const char* stem;   ///< its button logs itself as "<stem>/close"
    std::span<const Paragraph> paragraphs;
    const char* last_words;
    const char* button;
};

/// Draws it while it is open; Escape closes it too.
void draw_reading_page(const Ui& ui, const ReadingPage& page);

}  // namespace beamfork
