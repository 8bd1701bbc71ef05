// What a talk that is being given keeps from frame to frame.
#pragma once

#include <cstddef>
#include <string>

#include "scene/camera.hpp"

namespace beamfork {

/// Seconds are ImGui::GetTime()'s.
struct TalkState {
    std::string tour;  ///< its name
    std::size_t step = 0;
    std::size_t steps = 1;   ///< of the tour, as it was last drawn
    Camera before;           ///< the talk: taken up again when it ends
    Camera from;             ///< where the flight to this step began
    float flight_done = 0;   ///< 0 to 1
    bool is_turned = false;  ///< the speaker has turned the picture since the step was reached
    bool is_black = false;   ///< the screen
    bool has_notes = false;  ///< the window with the notes is wanted
    double began_s = 0;
    double pointer_moved_s = -1e9;
};

}  // namespace beamfork
