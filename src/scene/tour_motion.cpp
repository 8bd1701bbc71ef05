#include "scene/tour_motion.hpp"

#include <algorithm>

#include "base/contract.hpp"

namespace beamfork {

namespace {

// 0 to 1 with no speed at either end: the cubic 3 t^2 - 2 t^3.
float eased(double t) { return static_cast<float>(t * t * (3 - 2 * t)); }

}  // namespace

Camera tour_camera(const TourStep& step, const Frame& frame, float aspect) {
    return standard_view(step.view, frame, aspect);
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
