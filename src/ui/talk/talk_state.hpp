// What a talk that is being given keeps from frame to frame.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/view_options.hpp"

namespace beamfork {

/// Seconds are ImGui::GetTime()'s.
struct TalkState {
    std::string tour;  ///< its name
    std::size_t step = 0;
    std::size_t steps = 1;    ///< of the tour, as it was last drawn
    Camera before;            ///< the talk: taken up again when it ends
    ViewOptions seen_before;  ///< likewise, what was shown besides where the light goes
    std::optional<std::size_t> shown_step;  ///< whose own `show` has been obeyed
    Camera from;                            ///< where the flight to this step began
    Emphasis emphasis_from;                 ///< how the picture was drawn then ...
    Emphasis emphasis;                      ///< ... and is drawn now
    float flight_done = 0;                  ///< 0 to 1
    std::size_t answers =
        0;  ///< of the question of this step, as it was last drawn; 0: it asks nothing
    bool is_revealed = false;             ///< the answer is told
    std::optional<std::size_t> chosen{};  ///< the room's answer
    float reveal_done = 0;                ///< 0 to 1: what was traced comes into the picture
    bool is_turned = false;  ///< the speaker has turned the picture since the step was reached
    bool is_black = false;   ///< the screen
    bool has_notes = false;  ///< the window with the notes is wanted
    double began_s = 0;
    double pointer_moved_s = -1e9;
};

}  // namespace beamfork
