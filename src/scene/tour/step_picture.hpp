// What is shown while a step of a tour is told, where that is more than the document's own train: two stars alone, the
// light path as a ruler, another setup, what was before as a ghost; and the Moon as each eye sees it.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "document/tour.hpp"
#include "scene/picture/picture.hpp"
#include "scene/sight_view/sight_view_picture.hpp"

namespace beamfork {

struct StepPicture {
    std::optional<Frame>
        frame{};  ///< none: the document's train as it is, its parts together or apart
    std::shared_ptr<const SightImage>
        sight{};  ///< left eye, right eye; null: the step does not show it
};

/// Slow where it shows more than the train as it is. `report` must be of `setup`.
StepPicture step_picture(const TourStep& step,
                         const Setup& setup,
                         const Report& report,
                         const PictureEffort& effort);

/// Of all its steps.
std::vector<StepPicture> step_pictures(const Tour& tour,
                                       const Setup& setup,
                                       const Report& report,
                                       const PictureEffort& effort);

}  // namespace beamfork
