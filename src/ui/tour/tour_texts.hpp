// The words of one step of a tour, as they are written in the panel of tours.
#pragma once

#include "document/edit.hpp"
#include "ui/tour/tours_panel.hpp"

namespace beamfork {

/// All changes of tours pass here: a copy of them, changed, for the one door.
template <class Change>
void change_tours(const TourUi& ui, const char* label, Change change) {
    std::vector<Tour> tours = ui.document.tours;
    change(tours);
    ui.edit(SetTours{std::move(tours), label});
}

/// Changes the step that TourEditState names.
template <class Change>
void change_step(const TourUi& ui, const char* label, Change change) {
    const TourEditState& state = ui.state;
    change_tours(ui, label,
                 [&](std::vector<Tour>& all) { change(all.at(state.tour).steps.at(state.step)); });
}

/// An entry for one text of the step that is shown. What is typed is taken when the entry is left; what cannot be taken
/// stays as it was typed, with the reason below it, also while other steps are shown. Widgets: `name` and, for what is
/// refused, "tours/refused" or name + "/refused".
struct StepText {
    const char* entry;  ///< as in TourTextPlace
    const char* name;   ///< of the widget
    const char* label;
    const char* help;
    float lines = 1;  ///< high; 1: a line of its own
};
void draw_step_text(const TourUi& ui, const StepText& text, const TourStep& step);

/// Caption and notes of the step that TourEditState names; needs a report.
void draw_tour_texts(const TourUi& ui, const TourStep& step);

/// What is typed in steps that are not shown is taken where it can be.
void settle_drafts(const TourUi& ui);
/// What is wrong with the drafts of that step; nothing where there is none, or nothing wrong.
std::optional<std::string> draft_objection(const TourUi& ui, const Tour& tour, std::size_t step);

/// What is lit, part by part (tour_lights.cpp).
void draw_tour_lights(const TourUi& ui, const TourStep& step);
/// The question to the room with its answers (tour_asks.cpp); needs a report.
void draw_tour_question(const TourUi& ui, const TourStep& step);

}  // namespace beamfork
