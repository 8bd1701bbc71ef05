// What can be taken hold of in the 3D picture: where it is, along which line it moves, where its knob stands.
#pragma once

#include <optional>
#include <vector>

#include "scene/handles/axis_drag.hpp"
#include "scene/handles/movable_length.hpp"

namespace beamfork {

/// Where the knob stands: beside the line, at the body's outline, or ahead on the line.
enum class KnobPlace { beside, ahead };

struct Handle {
    MovableLength length;
    AxisLine line;         ///< origin: where what moves stands for a value of 0
    double per_value = 1;  ///< mm along the line for one mm of the value
    double radius = 1;     ///< of the body round the place that moves, mm
    Point stays{0.0};      ///< the end of the part that does not move with the value
    KnobPlace knob = KnobPlace::beside;
    Direction free_side{0.0};  ///< where the light does not turn to; 0: either side
    [[nodiscard]] double place_of(double value) const { return per_value * value; }
    [[nodiscard]] Point place() const { return line.at(place_of(length.value)); }
};

/// Of this part as the report has placed it: one, or one for each arm of a head; none for most parts.
std::vector<Handle> handles_of(const Setup& setup, const Report& report, std::size_t part);

/// How a handle is seen. Pixels.
struct HandleView {
    glm::vec2 place{0};           ///< what moves
    glm::vec2 rim{0};             ///< the body's outline beside it: where the knob's stalk starts
    glm::vec2 knob{0};            ///< its middle
    glm::vec2 along{1, 0};        ///< unit: where a larger value is
    bool goes_by_height = false;  ///< the line points at the viewer
};

/// The knob stands `stalk_px` off the body, on the free side, else the upper (of an upright line the left), and never nearer than
/// that to the picture's edge. Nothing for what lies behind the viewer or outside the picture.
std::optional<HandleView>
view_of(const Handle& handle, const Camera& camera, Viewport viewport, float stalk_px);

}  // namespace beamfork
