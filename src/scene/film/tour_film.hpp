// A tour as a film: the camera flies from step to step and holds, the captions and what is lit change with it.
#pragma once

#include "scene/film/film.hpp"
#include "scene/tour/tour_motion.hpp"

namespace beamfork {

/// What is filmed; frames and setup must live as long as the film.
struct TourScene {
    TourFrames frames;
    const Setup& setup;
    float aspect = 1;      ///< of the picture between title and caption
    ViewOptions before{};  ///< what is shown besides what the steps ask for
};

/// A step that asks waits with its question, then shows the answer. The tour must have a step. Errors as filled_caption.
Result<Film> tour_film(const Tour& tour,
                       std::span<const TourQuote> quotes,
                       const TourScene& scene,
                       TourPace pace);

}  // namespace beamfork
