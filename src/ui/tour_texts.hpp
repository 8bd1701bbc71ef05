// The words of one step of a tour, as they are written in the panel of tours.
#pragma once

#include "ui/ui.hpp"

namespace beamfork {

/// All changes of tours pass here: a copy of them, changed, for the one door.
template <class Change>
void change_tours(const Ui& ui, const char* label, Change change) {
    std::vector<Tour> tours = ui.view.document.tours;
    change(tours);
    ui.edit(SetTours{std::move(tours), label});
}

/// Caption and notes of the step that TransientState::tour_edit names; needs a report. A caption that cannot be taken
/// stays as it was typed, with the reason below it.
void draw_tour_texts(const Ui& ui, const TourStep& step);

}  // namespace beamfork
