// A tour in time: which step is told at a moment and from where it is seen. Pure: the clock is the caller's.
#pragma once

#include "document/tour.hpp"
#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"

namespace beamfork {

struct Frame;
struct StepPicture;

/// Every step is flown to, then held; one that asks waits before. The first is held alone: there is nothing to come from.
struct TourPace {
    double flight_s = 2;
    double hold_s = 8;
    double ask_s = 6;  ///< a step that asks waits so long before it is held with its answer
};

struct TourMoment {
    Camera camera;
    /// Index into Tour::steps; the caption changes when the flight to it begins.
    std::size_t step = 0;
    float flown = 1;     ///< share of the way to it, eased
    float revealed = 1;  ///< of the answer to what it asks: 0 while the room thinks .. 1, eased
};

/// Of a talk's picture, at its foot: where the answers stand once the room has been told.
inline constexpr float asked_share = 0.12F;
/// What was traced comes into the picture in so many seconds once the answer is told.
inline constexpr double reveal_seconds = 0.8;

/// How the picture is drawn at a step, and on the way to it from the one before.
Emphasis step_emphasis(const TourStep& step, const Setup& setup, float revealed);
Emphasis emphasis_at(const Tour& tour, const TourMoment& moment, const Setup& setup);

/// 0 to 1 with no speed at either end.
float eased(double t);

/// A tour's picture data: of the parts together, where a step pulls them apart, of that (null: it is framed together), and
/// by step what it alone shows (scene/tour/step_picture.hpp; empty: no step does).
struct TourFrames {
    const Frame& together;
    const Frame* apart = nullptr;
    std::span<const StepPicture> own{};
    [[nodiscard]] const Frame& of(const Tour& tour, std::size_t step) const;
};

/// From where a step is seen; a step that asks leaves the foot of the picture free.
Camera tour_camera(const TourStep& step, const Frame& frame, float aspect);

/// The present view as a step keeps it: hundredths of a millimetre and of a degree. The field of view is every tour's.
TourCamera camera_for_tour(const Camera& camera);

/// On the way from one camera to another, `done` from 0 to 1 in time: eased at both ends, turning the shorter way round.
Camera flight_between(const Camera& from, const Camera& to, double done);

/// Of the whole tour, seconds; 0 without steps.
double tour_duration(const Tour& tour, TourPace pace = {});

/// `seconds` from the tour's beginning, clamped to its duration. The camera eases in and out and turns the shorter way
/// round. The tour must have a step, and the pace must not be negative.
TourMoment tour_at(
    const Tour& tour, double seconds, const TourFrames& frames, float aspect, TourPace pace = {});

}  // namespace beamfork
