// Talk mode: one of the setup's tours over the whole screen, in large type and without panels. The speaker's keys are
// talk_actions() (action.hpp).
#pragma once

#include "ui/kit/area.hpp"
#include "ui/shell/ui.hpp"

namespace beamfork {

/// The list of tours opens; needs a report.
void ask_for_talk(const Ui& ui);
void draw_talk_chooser(const Ui& ui);

void start_talk(const Ui& ui, const std::string& tour);
void leave_talk(const Ui& ui);

/// The room's answer to the question of this step, from 0: what is right is told. Nothing happens where nothing is asked.
void choose_answer(const Ui& ui, std::size_t answer);

/// In place of all else. False, and nothing drawn, when no talk is given; a talk ends by itself where the setup makes no
/// train any more, and when the window is to be closed.
bool draw_talk(const Ui& ui);

/// The three discs for a finger, low in the picture or above the answers that stand there (talk_buttons.cpp). Returns whether the mouse is on one.
bool draw_talk_buttons(const Ui& ui, const Area& picture, float alpha);
/// The spot of light that follows the mouse; `darkens`: all but what it shows is dimmed (talk_pointer.cpp).
void draw_talk_pointer(ImDrawList& list, ImVec2 screen, float alpha, bool darkens);

}  // namespace beamfork
