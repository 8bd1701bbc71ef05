#include "scene/picture/light_arrival.hpp"

#include <cmath>

#include "trace/forked_ray.hpp"
#include "trace/sampling.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string times_slower(float speed_mm_s) {
    constexpr double speed_of_light_mm_s = 299'792'458e3;  // by definition of the metre (SI)
    const double times = speed_of_light_mm_s / speed_mm_s;
    return fmt::format("{:.1f} thousand million times slower", times / 1e9);
}

std::string verdict(double left_longer) {
    constexpr double last_digit = 0.005;  // mm, of what is told
    constexpr double mm_per_picosecond = 0.299792458;
    if (std::abs(left_longer) < last_digit) return "Equal paths: it comes to both eyes at once.";
    return fmt::format("{} is {:.2f} mm longer: in truth {:.1f} ps later.",
                       left_longer > 0 ? "Left" : "Right", std::abs(left_longer),
                       std::abs(left_longer) / mm_per_picosecond);
}

}  // namespace

LightArrival light_arrival(const Train& train) {
    LightArrival arrival;
    constexpr double ahead = 10;  // mm; any
    const Ray start = ray_into(train, {0, 0}, {0, 0}, ahead);
    const double at_objective =
        start.path + glm::distance(start.origin, Point{0, 0, train.pupil_plane});
    const std::size_t dividing = dividing_surface(train);
    arrival.is_known = true;
    for (const Eye eye : both_eyes) {
        const std::size_t side = side_of(eye);
        const EyePath open = without_stops(train.path(eye));
        const TracedRay axis = trace_with_corners(open, start, primary_wavelength);
        arrival.is_known = arrival.is_known && !axis.is_lost();
        for (const RayCorner& corner : axis.corners) {
            if (corner.surface == dividing) arrival.at_splitter_mm = corner.path_in - at_objective;
        }
        arrival.at_stop_mm.at(side) = axis.corners.back().path_in - at_objective;
        arrival.stop.at(side) = glm::vec3(open.world_from_field_stop.origin);
    }
    return arrival;
}

double from_splitter(const LightArrival& arrival, Eye eye) {
    return arrival.at_stop_mm[side_of(eye)] - arrival.at_splitter_mm;
}

float packets_after(float front_mm, float speed_mm_s, double seconds) {
    const double front = std::fmod(front_mm + speed_mm_s * seconds, double{packet_spacing_mm});
    return static_cast<float>(front < 0 ? front + packet_spacing_mm : front);
}

float glow_at(double path_mm, float front_mm) {
    constexpr double fading_mm = 30;
    const double behind = packets_after(front_mm, 0, 0) - std::fmod(path_mm, packet_spacing_mm);
    return static_cast<float>(
        std::exp(-(behind < 0 ? behind + packet_spacing_mm : behind) / fading_mm));
}

ArrivalWords arrival_words(const LightArrival& arrival, float speed_mm_s) {
    const double left = from_splitter(arrival, Eye::left);
    const double right = from_splitter(arrival, Eye::right);
    return {"Light, " + times_slower(speed_mm_s), fmt::format("{:.2f} mm", left),
            fmt::format("{:.2f} mm", right), verdict(left - right)};
}

}  // namespace beamfork
