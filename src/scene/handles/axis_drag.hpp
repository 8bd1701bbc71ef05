// Moving something along a straight line in space with the mouse: which place on the line is meant by a pixel.
//
// Millimetres in the world, pixels as in scene/picture/camera.hpp (y down).
#pragma once

#include <optional>

#include "geometry/pose.hpp"
#include "scene/picture/camera.hpp"

namespace beamfork {

/// All places origin + t direction; `direction` is a unit vector, t in mm.
struct AxisLine {
    Point origin{0.0};
    Direction direction{0, 0, 1};
    [[nodiscard]] Point at(double t) const { return origin + t * direction; }
};

/// The t of the place on the line that is nearest to the half line of sight (closest approach of two lines).
/// Infinite, with the sign of the line's far end, when sight has passed the line's vanishing point; nothing when
/// the two are parallel.
std::optional<double> place_under(const AxisLine& line, const ViewRay& sight);

/// A drag as it was when the button went down. What follows is measured from there, so that a camera or a line
/// that moves meanwhile cannot feed back into it.
class AxisDrag {
public:
    /// `held` is the t of what was taken hold of.
    AxisDrag(const AxisLine& line,
             double held,
             const Camera& camera,
             Viewport viewport,
             glm::vec2 pressed);

    /// mm along the line from the press to this pixel, at most `farthest_mm` either way: what was taken hold of
    /// stays under the pointer. A line that points nearly at the viewer cannot be followed on screen; then the
    /// pointer's height counts instead: up moves away from the viewer, by as many mm as the pixels measure there.
    [[nodiscard]] double moved(glm::vec2 pixel) const;
    [[nodiscard]] bool goes_by_height() const { return goes_by_height_; }

    static constexpr double farthest_mm = 5000;

private:
    [[nodiscard]] double place_at(glm::vec2 pixel) const;

    AxisLine line_;
    Camera camera_;
    Viewport viewport_;
    glm::vec2 pressed_;
    bool goes_by_height_ = false;
    double mm_per_px_up_ = 0;
    double start_ = 0;
};

/// Whether a line seen at `at` points so nearly at the viewer (within 12 degrees) that it has no length on screen.
bool points_at_viewer(const Direction& direction, const Point& at, const Camera& camera);

}  // namespace beamfork
