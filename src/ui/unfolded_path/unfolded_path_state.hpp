// How the unfolded path is looked at, and what of it is being dragged: kept from frame to frame, never saved.
#pragma once

#include <optional>

#include "scene/unfolded_path/unfolded_path_view.hpp"

namespace beamfork {

/// A part's length that is held with the mouse, as it was when the button went down.
struct LengthDrag {
    HeldLength held;
    double anchor = 0;  ///< place of what stays with the part, mm
    float pointer = 0;  ///< pixels from the left
    UnfoldedView view;
};

struct UnfoldedPathState {
    UnfoldedEyes eyes = UnfoldedEyes::both;
    std::optional<UnfoldedView> view;  ///< none: all is shown
    std::optional<LengthDrag> drag;
    float drag_length = 0;  ///< pixels since the button went down in the picture
};

}  // namespace beamfork
