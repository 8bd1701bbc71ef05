#include "scene/picture/folded_axis.hpp"

#include <algorithm>

#include "study/focus/focus_budget.hpp"

namespace beamfork {

std::vector<Point> folded_axis(const EyePath& path, double from, double to) {
    const auto [low, high] = std::minmax(from, to);
    std::vector<Point> points{point_near_stop(path, {high})};
    double place = 0;  // of the end of the present step
    for (auto step = path.steps.rbegin(); step != path.steps.rend(); ++step) {
        if (place > low && place < high) points.push_back(step->to);
        if (step->lens_focal_length != 0) break;
        place -= step->reduced();
    }
    points.push_back(point_near_stop(path, {low}));
    if (from < to) std::reverse(points.begin(), points.end());
    return points;
}

}  // namespace beamfork
