// How the unfolded path is looked at: places in mm to pixels and back, zoom, and names that find room beside each
// other. Pure, so that it is tested without a window.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/unfolded_path/unfolded_path_rows.hpp"

namespace beamfork {

/// Pixels count from the picture's left end and from its mid line, downwards.
struct UnfoldedView {
    double left = 0;       ///< place on the axis at the picture's left end, mm
    double px_per_mm = 1;  ///< along the axis
    double across = 1;     ///< how much larger heights are drawn
    double middle = 0;     ///< height at the picture's mid line, mm
    [[nodiscard]] double x_of(double place) const { return (place - left) * px_per_mm; }
    [[nodiscard]] double y_of(double height) const {
        return (middle - height) * px_per_mm * across;
    }
    [[nodiscard]] double place_at(double x) const { return left + x / px_per_mm; }
    [[nodiscard]] double height_at(double y) const { return middle - y / (px_per_mm * across); }
    bool operator==(const UnfoldedView&) const = default;
};

/// Shows all from the drawtube to behind the field stops in a picture of that size (pixels). Heights are drawn larger
/// than lengths by a round factor, or down to half as large where a low picture asks for it; where there is room to
/// spare, more of the telescope's light is shown.
UnfoldedView fit_view(const UnfoldedPathRows& rows, double width, double height);

/// `factor` times larger about the pixel that stays in its place, within sensible limits.
UnfoldedView zoomed(const UnfoldedView& view, double factor, double x, double y);

/// What was at one pixel comes to lie (dx, dy) pixels farther.
UnfoldedView panned(const UnfoldedView& view, double dx, double dy);

/// 1, 2 or 5 times a power of ten mm: the smallest that is at least `least_px` wide.
double tick_step(const UnfoldedView& view, double least_px);

/// Which eyes are drawn: both share the axis, the left one above it and the right one below.
enum class UnfoldedEyes { both, left, right };
bool shows(UnfoldedEyes eyes, Eye eye);

/// The right eye is drawn upside down, so that its darker side of the field lies below.
constexpr double drawn_sign(Eye eye) { return eye == Eye::left ? 1 : -1; }

/// What lies under a pixel: a mark of the focus, the nearest jaw, glass, or else the shortest part there.
struct PathHit {
    std::optional<std::size_t> part;
    std::string help;
};
PathHit path_under(
    const UnfoldedPathRows& rows, UnfoldedEyes eyes, const UnfoldedView& view, double x, double y);

/// A word that wants to stand centred at `wanted` and is `width` wide.
struct LaneWord {
    double wanted = 0;
    double width = 0;
};
/// Left ends of all words (in rising order of `wanted`), none over another, at least `gap` apart, within 0 .. `room`
/// while they fit: each as near to its place as those before and behind allow.
std::vector<double> lane_places(const std::vector<LaneWord>& words, double room, double gap);

/// The width to which words must be cut so that all fit into `room` with `gap` between them.
double lane_limit(const std::vector<LaneWord>& words, double room, double gap);

}  // namespace beamfork
