// What the last file and the last command had to say, under the top bar and along the foot of the window.
#pragma once

#include "ui/shell/layout.hpp"
#include "ui/shell/shell_ui.hpp"

namespace beamfork {

/// 0 when there is nothing to tell.
float notice_bar_height(const ShellUi& ui);
/// A word of welcome, refused commands, and what the file holds that has no effect; each until it is put away.
void draw_notice_bar(const ShellUi& ui, const Area& area);

/// The last message, and the cautions (status_bar.cpp).
void draw_status_bar(const ShellUi& ui, const Area& area);
/// Sun, weight, night work: a short text each (cautions.cpp).
void draw_cautions(const ShellUi& ui);
/// The page "What is assumed".
void draw_assumptions(const ShellUi& ui);

}  // namespace beamfork
