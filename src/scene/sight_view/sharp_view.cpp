#include "scene/sight_view/sharp_view.hpp"

#include <algorithm>
#include <cmath>

#include "scene/sight_view/sight_colour.hpp"

namespace beamfork {

namespace {

// Mean light of one pixel of an extended subject, from `fine` squared places of it.
glm::vec3 pixel_light(const EyeSight& sight,
                      const SightScene& scene,
                      double tick,
                      const SightGrid& grid,
                      glm::ivec2 pixel,
                      int fine) {
    glm::vec3 light{0};
    for (int k = 0; k < fine * fine; ++k) {
        const int line = k / fine;
        const double x = pixel.x + (k % fine + 0.5) / fine;
        const double y = pixel.y + (line + 0.5) / fine;
        const glm::dvec2 stop = stop_of_apparent(sight, grid.apparent(x, y));
        if (glm::length(stop) > 1.25 * sight.stop_radius.value) continue;
        light += sky_light(scene, sky_of_stop(sight, stop), tick);
    }
    return light / static_cast<float>(fine * fine);
}

// An extended subject; each pixel of the finished picture has four samples.
SightPlanes draw_surface(const EyeSight& sight,
                         const SightScene& scene,
                         const SightFrame& frame,
                         const SightGrid& grid) {
    SightPlanes planes;
    for (auto& plane : planes)
        plane.assign(static_cast<std::size_t>(grid.side * grid.side), 0);
    if (is_points(scene)) return planes;
    const double coarseness = frame.pixels / (frame.shown * grid.scale);
    const int fine = std::max(2, static_cast<int>(std::lround(2 * coarseness)));
    for (int row = 0; row < grid.side; ++row) {
        for (int column = 0; column < grid.side; ++column) {
            const glm::vec3 light =
                xyz_from_rgb * pixel_light(sight, scene, frame.tick, grid, {column, row}, fine);
            for (int channel = 0; channel < 3; ++channel)
                planes[channel][static_cast<std::size_t>(row * grid.side + column)] =
                    light[channel] * static_cast<float>(sight.surface);
        }
    }
    return planes;
}

// Each star's light goes to the four nearest pixels.
void add_stars(SightPlanes& planes,
               const EyeSight& sight,
               const SightScene& scene,
               const SightFrame& frame,
               const SightGrid& grid) {
    const double gathered = sight.aperture.value * sight.aperture.value * sight.light;
    const double pixel = frame.pixels / (frame.shown * grid.scale);  // sides of a fine pixel
    for (const SkyStar& star : stars_of(scene, frame.sky_radius, frame.faintest)) {
        if (scene.subject == SightSubject::stars && star.magnitude > sight.limiting) continue;
        const glm::dvec2 at = grid.place(apparent_of_stop(sight, stop_of_sky(sight, star.at)));
        const int left = static_cast<int>(std::floor(at.x - 0.5));
        const int top = static_cast<int>(std::floor(at.y - 0.5));
        if (left < 0 || top < 0 || left + 1 >= grid.side || top + 1 >= grid.side) continue;
        const glm::vec3 colour = xyz_from_rgb * star.colour;
        const double energy = gathered * std::pow(10, -0.4 * star.magnitude) / (pixel * pixel);
        for (int k = 0; k < 4; ++k) {
            const double x = at.x - 0.5 - left;
            const double y = at.y - 0.5 - top;
            const double share = (k % 2 == 0 ? 1 - x : x) * (k / 2 == 0 ? 1 - y : y);
            const auto index = static_cast<std::size_t>((top + k / 2) * grid.side + left + k % 2);
            for (int channel = 0; channel < 3; ++channel)
                planes[channel][index] += static_cast<float>(energy * share) * colour[channel];
        }
    }
}

}  // namespace

SightPlanes sharp_planes(const EyeSight& sight,
                         const SightScene& scene,
                         const SightFrame& frame,
                         const SightGrid& grid) {
    SightPlanes planes = draw_surface(sight, scene, frame, grid);
    add_stars(planes, sight, scene, frame, grid);
    return planes;
}

}  // namespace beamfork
