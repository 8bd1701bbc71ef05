// Writing a tour of one's own, step by step: what is seen, what the room reads, what the speaker says.
#pragma once

#include "ui/picture/picture_ui.hpp"
#include "ui/tour/tour_edit_state.hpp"

namespace beamfork {

struct TourUi : Ui {
    PictureUi picture;
    TourEditState& state;
};

void draw_tours_panel(const TourUi& ui);

}  // namespace beamfork
