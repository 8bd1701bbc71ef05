// Talk mode: one of the setup's tours over the whole screen, in large type and without panels. The speaker's keys are
// talk_actions().
#pragma once

#include <optional>
#include <span>
#include <string>

#include "ui/kit/area.hpp"
#include "ui/picture/picture_ui.hpp"
#include "ui/talk/speaker_page.hpp"
#include "ui/talk/talk_state.hpp"

namespace beamfork {

struct TalkView {
    bool has_second_screen = false;  ///< besides the one that the window is on
};

struct TalkPlace {
    bool is_wanted = false;         ///< the list of tours opens
    std::optional<TalkState> talk;  ///< while one is given
};

struct TalkUi : Ui {
    PictureUi picture;
    const TalkView& view;
    TalkPlace& state;
    std::optional<SpeakerPage>&
        asks;  ///< a page for the speaker's own window; none: no such window
};

/// The list of tours opens; needs a report.
void ask_for_talk(const TalkUi& ui);
void draw_talk_chooser(const TalkUi& ui);

void start_talk(const TalkUi& ui, const std::string& tour);
void leave_talk(const TalkUi& ui);

/// The room's answer to the question of this step, from 0: what is right is told. Nothing happens where nothing is asked.
void choose_answer(const TalkUi& ui, std::size_t answer);

/// In place of all else. False, and nothing drawn, when no talk is given; a talk ends by itself where the setup makes no
/// train any more.
bool draw_talk(const TalkUi& ui);

/// The speaker's keys: heard while a talk is given, and then they alone (talk_actions.cpp).
std::span<const KeyedAction<TalkUi>> talk_actions();
void use_talk_keys(const TalkUi& ui);

/// The three discs for a finger, low in the picture or above the answers that stand there (talk_buttons.cpp). Returns whether the mouse is on one.
bool draw_talk_buttons(const TalkUi& ui, const Area& picture, float alpha);
/// The spot of light that follows the mouse; `darkens`: all but what it shows is dimmed (talk_pointer.cpp).
void draw_talk_pointer(ImDrawList& list, ImVec2 screen, float alpha, bool darkens);

}  // namespace beamfork
