// The whole train, small and from the same side, with the stretch of it that the picture shows: wherever the picture does
// not show it whole. Pixels as in scene/picture/camera.hpp: y down.
#pragma once

#include <optional>
#include <vector>

#include "scene/picture/camera.hpp"
#include "scene/picture/light_cover.hpp"

namespace beamfork {

struct InsetBody {
    std::vector<glm::vec2> outline;  ///< convex
    int part = -1;
};

struct TrainInset {
    PixelBox box;
    std::vector<InsetBody> bodies;
    PixelBox seen;  ///< what the picture shows, as far as it lies in the box
};

/// Where an inset of the usual size stands: in the lower left corner, above `foot_px`.
PixelBox inset_box(Viewport viewport, float foot_px);

/// Empty while all of the train is in the picture, or nothing of it, and where the picture is too small for an inset.
std::optional<TrainInset>
train_inset(const Frame& frame, const Camera& camera, Viewport viewport, float foot_px);

}  // namespace beamfork
