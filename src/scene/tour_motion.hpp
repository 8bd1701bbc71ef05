// A tour in time: which step is told at a moment and from where it is seen. Pure: the clock is the caller's.
#pragma once

#include "document/tour.hpp"
#include "scene/camera.hpp"

namespace beamfork {

/// Every step is flown to, then held. The first is held alone: there is nothing to come from.
struct TourPace {
    double flight_s = 2;
    double hold_s = 8;
};

struct TourMoment {
    Camera camera;
    std::size_t step =
        0;  ///< index into Tour::steps; the caption changes when the flight to it begins
};

/// From where a step is seen.
Camera tour_camera(const TourStep& step, const Frame& frame, float aspect);

/// The present view as a step keeps it: hundredths of a millimetre and of a degree. The field of view is every tour's.
TourCamera camera_for_tour(const Camera& camera);

/// On the way from one camera to another, `done` from 0 to 1 in time: eased at both ends, turning the shorter way round.
Camera flight_between(const Camera& from, const Camera& to, double done);

/// Of the whole tour, seconds; 0 without steps.
double tour_duration(const Tour& tour, TourPace pace = {});

/// `seconds` from the tour's beginning, clamped to its duration. The camera eases in and out and turns the shorter way
/// round. The tour must have a step, and the pace must not be negative.
TourMoment
tour_at(const Tour& tour, double seconds, const Frame& frame, float aspect, TourPace pace = {});

}  // namespace beamfork
