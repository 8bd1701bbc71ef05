#include "scene/film/film.hpp"

#include <algorithm>
#include <cmath>

#include "base/contract.hpp"
#include "scene/picture/light_arrival.hpp"
#include "scene/picture/pulled_apart.hpp"

#include <glm/gtc/constants.hpp>

namespace beamfork {

namespace {

constexpr int yaws_tried = 72;

// The farthest of the distances at which each side of the box fits, about its centre.
float distance_all_round(const Bounds& bounds, Camera camera, float aspect) {
    constexpr float margin = 0.06F;
    float farthest = 0;
    const float half_high = std::tan(0.5F * camera.field_of_view_rad) * (1 - margin);
    for (int i = 0; i < yaws_tried; ++i) {
        camera.yaw_rad = glm::two_pi<float>() * static_cast<float>(i) / yaws_tried;
        const CameraAxes axes = camera_axes(camera);
        for (unsigned corner = 0; corner < 8; ++corner) {
            const glm::vec3 share((corner & 1U) != 0, (corner & 2U) != 0, (corner & 4U) != 0);
            const glm::vec3 at = glm::mix(bounds.low, bounds.high, share) - bounds.centre();
            const float across = std::abs(glm::dot(at, axes.right)) / (half_high * aspect);
            const float along = std::abs(glm::dot(at, axes.up)) / half_high;
            farthest = std::max(farthest, glm::dot(at, axes.back) + std::max(across, along));
        }
    }
    return std::max(farthest, 10.0F);
}

// Together, apart and together again: each held for a while, so that it can be seen.
float apart_share(double share_of_film) {
    constexpr double rests = 0.12;  // of the film, at either end
    constexpr double moves = 0.26;
    const double from_end = std::min(share_of_film, 1 - share_of_film);
    return apart_after(static_cast<float>((from_end - rests) / moves));
}

}  // namespace

int frame_count(const Film& film, double fps) {
    BEAMFORK_EXPECTS(fps > 0 && film.seconds > 0);
    return std::max(1, static_cast<int>(std::lround(film.seconds * fps)));
}

double second_of(int frame, double fps) { return frame / fps; }

Film turntable(const Bounds& bounds, const TurntableLook& look) {
    BEAMFORK_EXPECTS(look.seconds > 0 && look.aspect > 0);
    Camera camera;
    camera.target = bounds.centre();
    camera.pitch_rad = look.pitch_rad;
    camera.distance_mm = distance_all_round(bounds, camera, look.aspect);
    const auto at = [look, camera](double second) {
        FilmMoment moment{.camera = camera, .options = look.options, .caption = look.caption};
        const double turns = look.turns * second / look.seconds;
        moment.camera.yaw_rad = std::remainder(
            look.start_yaw_rad
                + glm::two_pi<float>() * static_cast<float>(turns - std::floor(turns)),
            glm::two_pi<float>());
        return moment;
    };
    return {look.seconds, at};
}

Film with_motion(Film film, const FilmMotion& motion) {
    const auto still = std::move(film.at);
    film.at = [still, motion, seconds = film.seconds](double second) {
        FilmMoment moment = still(second);
        ViewOptions& options = moment.options;
        options.light_moves = options.light_moves || motion.light;
        if (options.light_moves)
            options.light_front_mm = packets_after(0, options.light_speed_mm_s, second);
        if (motion.parts_apart) options.apart = apart_share(second / seconds);
        return moment;
    };
    return film;
}

}  // namespace beamfork
