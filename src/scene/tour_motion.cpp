#include "scene/tour_motion.hpp"

#include <algorithm>
#include <cmath>

#include "base/contract.hpp"

namespace beamfork {

namespace {

// 0 to 1 with no speed at either end: the cubic 3 t^2 - 2 t^3.
float eased(double t) { return static_cast<float>(t * t * (3 - 2 * t)); }

}  // namespace

Camera tour_camera(const TourStep& step, const Frame& frame, float aspect) {
    if (!step.camera) return standard_view(step.view, frame, aspect);
    const TourCamera& given = *step.camera;
    Camera camera;
    for (int i = 0; i < 3; ++i)
        camera.target[i] = static_cast<float>(given.target_mm.at(static_cast<std::size_t>(i)));
    camera.distance_mm = static_cast<float>(given.distance_mm);
    camera.yaw_rad = glm::radians(static_cast<float>(given.yaw_deg));
    camera.pitch_rad = glm::radians(static_cast<float>(given.pitch_deg));
    return camera;
}

TourCamera camera_for_tour(const Camera& camera) {
    const auto rounded = [](double value) { return std::round(value * 100) / 100; };
    TourCamera kept;
    for (int i = 0; i < 3; ++i)
        kept.target_mm.at(static_cast<std::size_t>(i)) = rounded(camera.target[i]);
    kept.distance_mm = rounded(camera.distance_mm);
    kept.yaw_deg = rounded(glm::degrees(static_cast<double>(camera.yaw_rad)));
    kept.pitch_deg = rounded(glm::degrees(static_cast<double>(camera.pitch_rad)));
    return kept;
}

Camera flight_between(const Camera& from, const Camera& to, double done) {
    return blend(from, to, eased(std::clamp(done, 0.0, 1.0)));
}

double tour_duration(const Tour& tour, TourPace pace) {
    if (tour.steps.empty()) return 0;
    const auto flights = static_cast<double>(tour.steps.size() - 1);
    return flights * (pace.flight_s + pace.hold_s) + pace.hold_s;
}

TourMoment
tour_at(const Tour& tour, double seconds, const Frame& frame, float aspect, TourPace pace) {
    BEAMFORK_EXPECTS(!tour.steps.empty() && pace.flight_s >= 0 && pace.hold_s >= 0);
    const auto seen_from = [&](std::size_t step) {
        return tour_camera(tour.steps[step], frame, aspect);
    };
    const double end = tour_duration(tour, pace);
    double left = std::clamp(seconds, 0.0, end) - pace.hold_s;  // since the step before was told
    std::size_t step = 0;
    while (left > 0 && step + 1 < tour.steps.size()) {
        ++step;
        if (left < pace.flight_s)
            return {flight_between(seen_from(step - 1), seen_from(step), left / pace.flight_s),
                    step};
        left -= pace.flight_s + pace.hold_s;
    }
    return {seen_from(step), step};
}

}  // namespace beamfork
