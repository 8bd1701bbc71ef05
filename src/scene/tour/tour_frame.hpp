// One step of a tour as it is shown: found by name and number, caption filled.
#pragma once

#include <span>
#include <string>

#include "base/error.hpp"
#include "document/tour.hpp"
#include "scene/picture/view_options.hpp"
#include "scene/tour/tour_question.hpp"

namespace beamfork {

struct TourFrame {
    std::string title;
    std::string caption;  ///< of a step that asks: what is told once it is answered
    TourStep told;        ///< from where it is seen
    int step = 1;         ///< from 1
    int steps = 1;
    std::optional<AskedQuestion> asked{};
    bool operator==(const TourFrame&) const = default;
};

/// What is shown while a step is told, over what was shown before the tour.
ViewOptions shown_in(const TourStep& step, ViewOptions before);

/// `name` as find_tour; `step` counts from 1. Errors: bad_input for an unknown tour, with the nearest known name, or a step that the tour
/// does not have; those of filled_caption.
Result<TourFrame> tour_frame(std::span<const Tour> tours,
                             const std::string& name,
                             int step,
                             std::span<const TourQuote> quotes);

}  // namespace beamfork
