// A tour: what a speaker tells of a setup, step by step. A plain value; its captions are templates that quote the
// studies by name, as in "the image falls {focus.shortfall}" (scene/tour_quotes.hpp), so that they cannot go stale.
#pragma once

#include <string>
#include <vector>

#include "scene/camera.hpp"

namespace beamfork {

struct TourStep {
    StandardView view = StandardView::overview;
    std::string caption;  ///< for the room: two or three short sentences
    std::string notes;    ///< for the speaker
    bool operator==(const TourStep&) const = default;
};

struct Tour {
    std::string name;  ///< one word for the command line: "why-it-will-not-focus"
    std::string title;
    std::vector<TourStep> steps;
    bool operator==(const Tour&) const = default;
};

}  // namespace beamfork
