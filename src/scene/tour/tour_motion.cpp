#include "scene/tour/tour_motion.hpp"

#include <algorithm>
#include <cmath>

#include "base/contract.hpp"
#include "scene/tour/step_picture.hpp"

namespace beamfork {

namespace {

Camera camera_without_foot(const TourStep& step, const Frame& frame, float aspect) {
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

double time_at(const TourStep& step, TourPace pace) {
    return pace.hold_s + (step.asks ? pace.ask_s : 0);
}

}  // namespace

// The cubic 3 t^2 - 2 t^3.
float eased(double t) {
    t = std::clamp(t, 0.0, 1.0);
    return static_cast<float>(t * t * (3 - 2 * t));
}

Camera tour_camera(const TourStep& step, const Frame& frame, float aspect) {
    if (!step.asks) return camera_without_foot(step, frame, aspect);
    // As in a picture that is lower by the foot, which is then put below it.
    constexpr float free_share = 1 - asked_share;
    Camera camera = camera_without_foot(step, frame, aspect / free_share);
    camera.distance_mm /= free_share;
    const float height = 2 * camera.distance_mm * std::tan(0.5F * camera.field_of_view_rad);
    camera.target -= 0.5F * asked_share * height * camera_axes(camera).up;
    return camera;
}

Emphasis step_emphasis(const TourStep& step, const Setup& setup, float revealed) {
    Emphasis emphasis = emphasis_on(step.lit, told_setup(step, setup));
    emphasis.results = step.asks ? revealed : 1;
    return emphasis;
}

Emphasis emphasis_at(const Tour& tour, const TourMoment& moment, const Setup& setup) {
    const Emphasis to = step_emphasis(tour.steps.at(moment.step), setup, moment.revealed);
    if (moment.step == 0) return to;
    return blend(step_emphasis(tour.steps[moment.step - 1], setup, 1), to, moment.flown);
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
    return blend(from, to, eased(done));
}

double tour_duration(const Tour& tour, TourPace pace) {
    if (tour.steps.empty()) return 0;
    double seconds = static_cast<double>(tour.steps.size() - 1) * pace.flight_s;
    for (const TourStep& step : tour.steps)
        seconds += time_at(step, pace);
    return seconds;
}

const Frame& TourFrames::of(const Tour& tour, std::size_t step) const {
    if (step < own.size() && own[step].frame) return *own[step].frame;
    return apart != nullptr && tour.steps[step].show.contains(TourShow::apart) ? *apart : together;
}

TourMoment
tour_at(const Tour& tour, double seconds, const TourFrames& frames, float aspect, TourPace pace) {
    BEAMFORK_EXPECTS(!tour.steps.empty() && pace.flight_s >= 0 && pace.hold_s >= 0
                     && pace.ask_s >= 0);
    const auto seen_from = [&](std::size_t step) {
        return tour_camera(tour.steps[step], frames.of(tour, step), aspect);
    };
    // Since the step was reached.
    double into = std::clamp(seconds, 0.0, tour_duration(tour, pace));
    std::size_t step = 0;
    while (into > time_at(tour.steps[step], pace) && step + 1 < tour.steps.size()) {
        into -= time_at(tour.steps[step], pace);
        ++step;
        if (into < pace.flight_s) {
            const double done = into / pace.flight_s;
            return {flight_between(seen_from(step - 1), seen_from(step), done), step, eased(done),
                    tour.steps[step].asks ? 0.0F : 1.0F};
        }
        into -= pace.flight_s;
    }
    const bool asks = tour.steps[step].asks.has_value();
    const float revealed = asks ? eased((into - pace.ask_s) / reveal_seconds) : 1;
    return {seen_from(step), step, 1, revealed};
}

}  // namespace beamfork
