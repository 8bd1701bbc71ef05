// A film as a function from time to what is seen: where the camera stands, what is shown, which words stand along the
// foot. Pure; pictures are made of it elsewhere.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "scene/picture/camera.hpp"
#include "scene/picture/emphasis.hpp"
#include "scene/picture/view_options.hpp"
#include "scene/tour/step_picture.hpp"
#include "scene/tour/tour_frame.hpp"

namespace beamfork {

/// What is seen at one moment.
struct FilmMoment {
    Camera camera;
    ViewOptions options;
    int highlighted_part = -1;
    std::string caption{};            ///< empty: none
    std::optional<TourFrame> told{};  ///< a talk's screen round the picture, instead of `caption`
    bool is_revealed = true;          ///< the answer to what it asks
    Emphasis emphasis{};
    const StepPicture* own = nullptr;  ///< what this step of a tour alone shows; null: nothing
    bool operator==(const FilmMoment&) const = default;
};

struct Film {
    double seconds = 10;
    std::function<FilmMoment(double second)> at;  ///< from 0 to `seconds`
    /// The picture's data while the parts are so far apart (ViewOptions::apart); null: they stay together.
    std::function<Frame(float apart)> frame_apart{};
};

/// What moves while a film runs, besides the camera.
struct FilmMotion {
    bool light = false;        ///< packets of light, at the pace of the film's view options
    bool parts_apart = false;  ///< the parts go apart and come back, once
};

/// The same film with that in it.
Film with_motion(Film film, const FilmMotion& motion);

/// Pictures of the whole film: one at each multiple of 1 / fps before its end, at least one.
int frame_count(const Film& film, double fps);
/// When that picture is seen, counted from 0.
double second_of(int frame, double fps);

/// How a turntable is filmed.
struct TurntableLook {
    double seconds = 12;
    float start_yaw_rad = 0.8F;
    float pitch_rad = 0.26F;
    float aspect = 16.0F / 9.0F;
    double turns = 1;  ///< 0: the camera stands still
    ViewOptions options;
    std::string caption;
};

/// Once round the train at an even rate, at one distance from which all of it stays in the picture. It ends where
/// it began, so that it can be shown again and again without a jump.
Film turntable(const Bounds& bounds, const TurntableLook& look);

}  // namespace beamfork
