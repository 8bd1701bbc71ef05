// What the bars round the panels are shown and keep.
#pragma once

#include <string>

#include "desk/desk_view.hpp"
#include "ui/kit/ui.hpp"
#include "ui/shell/layout.hpp"

namespace beamfork {

/// Goes with the document.
struct NoticeState {
    bool is_dismissed = false;  ///< what the file holds that has no effect has been put away
};

struct ShellState {
    bool is_first_frame = true;
    bool is_narrow = false;       ///< of the layout of this frame
    std::string study_before;     ///< LayoutSession::study of the frame before
    std::string panel_wanted;     ///< the window that gets the keyboard; empty: none
    std::string page_wanted;      ///< the page to read that opens; empty: none
    bool steps_wanted = false;    ///< the list of changes opens
    std::string dismissed_error;  ///< put away
};

struct ShellUi : Ui {
    const DeskView& desk;
    LayoutSession& layout;
    bool& welcome_dismissed;
    NoticeState& notices;
    ShellState& state;
    std::string& glossary_typed;
};

}  // namespace beamfork
