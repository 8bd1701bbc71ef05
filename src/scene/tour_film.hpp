// A tour as a film: the camera flies from step to step and holds, the captions change with it.
#pragma once

#include "scene/film.hpp"
#include "scene/tour_motion.hpp"

namespace beamfork {

/// `frame` must live as long as the film; `aspect` is that of the picture between title and caption. The tour must have
/// a step. Errors as filled_caption.
Result<Film> tour_film(const Tour& tour,
                       std::span<const TourQuote> quotes,
                       const Frame& frame,
                       float aspect,
                       TourPace pace);

}  // namespace beamfork
