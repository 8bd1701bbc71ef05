// The selected part: its name, its values, how well they are known; the setup's title and story while none is selected.
#pragma once

#include "ui/kit/ui.hpp"

namespace beamfork {

/// Why the change asked for last was refused.
struct Refusal {
    std::size_t part = 0;
    std::string key;
    std::string sentence;
};

/// Goes with the document.
struct PartState {
    std::optional<Refusal> refusal;
    bool focus_name = false;                 ///< the name's entry gets the keyboard
    std::optional<std::string> story_draft;  ///< while the story is being written
    std::string curve_wanted;                ///< a number's name: its curve is to be shown
};

struct PartUi : Ui {
    PartState& state;
};

void draw_part_panel(const PartUi& ui);

}  // namespace beamfork
