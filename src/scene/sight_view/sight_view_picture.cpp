#include "scene/sight_view/sight_view_picture.hpp"

#include <algorithm>
#include <cmath>

#include "base/srgb.hpp"
#include "scene/sight_view/field_blur.hpp"
#include "scene/sight_view/sharp_view.hpp"
#include "scene/sight_view/sight_colour.hpp"
#include "study/focus/diffraction.hpp"

namespace beamfork {

namespace {

float sample(const SightPlane& plane, int side, glm::dvec2 at) {
    const double x = std::clamp(at.x - 0.5, 0.0, side - 1.001);
    const double y = std::clamp(at.y - 0.5, 0.0, side - 1.001);
    const int left = static_cast<int>(x);
    const int top = static_cast<int>(y);
    const auto pixel = [&](int column, int row) {
        return static_cast<double>(plane[static_cast<std::size_t>(row * side + column)]);
    };
    return static_cast<float>(
        std::lerp(std::lerp(pixel(left, top), pixel(left + 1, top), x - left),
                  std::lerp(pixel(left, top + 1), pixel(left + 1, top + 1), x - left), y - top));
}

// One channel blurred, on a grid with room around the picture.
struct Channel {
    SightGrid grid;
    SightPlane plane;
};

// A wide blur needs few pixels: a channel is made coarser until its blur is a few pixels wide.
std::array<SightGrid, 3>
grids_for(const EyeSight& sight, const SightScene& scene, const SightFrame& frame) {
    const int widest = is_points(scene) ? 48 : 9;
    std::array<SightGrid, 3> grids;
    for (std::size_t channel = 0; channel < 3; ++channel) {
        SightGrid& grid = grids[channel];
        grid = {frame.pixels, frame.pixels / frame.shown};
        while (grid.side > 24 && greatest_reach(sight, channel, grid) > widest) {
            const int side = grid.side / 2;
            grid = {side, side / frame.shown};
        }
    }
    return grids;
}

std::array<Channel, 3>
channels_of(const EyeSight& sight, const SightScene& scene, const SightFrame& frame) {
    const std::array<SightGrid, 3> grids = grids_for(sight, scene, frame);
    std::array<Channel, 3> channels;
    SightPlanes sharp;
    SightGrid drawn;
    for (std::size_t channel = 0; channel < 3; ++channel) {
        const FieldBlur blur = field_blur(sight, channel, grids[channel]);
        // Room for light from beside the picture, the same for channels that need about as much.
        const int room = std::min((blur.reach + 8) / 8 * 8, grids[channel].side);
        const SightGrid grid{grids[channel].side + 2 * room, grids[channel].scale};
        if (grid.side != drawn.side || grid.scale != drawn.scale) {
            sharp = sharp_planes(sight, scene, frame, grid);
            drawn = grid;
        }
        channels[channel] = {grid, blurred(sharp[channel], sight, grid, blur)};
    }
    return channels;
}

}  // namespace

SightLight draw_light(const EyeSight& sight, const SightScene& scene, const SightFrame& frame) {
    const std::array<Channel, 3> channels = channels_of(sight, scene, frame);
    const glm::mat3 rgb_from_xyz = glm::inverse(xyz_from_rgb);
    SightLight picture{frame.pixels, {}};
    picture.light.reserve(static_cast<std::size_t>(frame.pixels * frame.pixels));
    const SightGrid fine{frame.pixels, frame.pixels / frame.shown};
    for (int row = 0; row < frame.pixels; ++row) {
        for (int column = 0; column < frame.pixels; ++column) {
            const glm::dvec2 apparent = fine.apparent(column + 0.5, row + 0.5);
            const glm::dvec2 at = stop_of_apparent(sight, apparent) / sight.stop_radius.value;
            const double inside = (1 - glm::length(at)) * sight.stop_radius
                                  / sight.eyepiece_focal_length * fine.scale;  // pixels
            glm::vec3 light{0};
            if (inside > -0.5) {  // dimmed as the field stop's light is, with the stop's edge
                const auto share = static_cast<float>(std::clamp(inside + 0.5, 0.0, 1.0)
                                                      * relative_at(sight.lit, at));
                for (int channel = 0; channel < 3; ++channel) {
                    const Channel& one = channels[static_cast<std::size_t>(channel)];
                    light[channel] =
                        share * sample(one.plane, one.grid.side, one.grid.place(apparent));
                }
            }
            // Colours purer than a screen has are shown as pure as it can.
            picture.light.push_back(glm::max(rgb_from_xyz * light, glm::vec3{0}));
        }
    }
    return picture;
}

SightLight mean_of(const SightLight& a, const SightLight& b) {
    BEAMFORK_EXPECTS(a.pixels == b.pixels);
    SightLight mean = a;
    for (std::size_t i = 0; i < mean.light.size(); ++i)
        mean.light[i] = (a.light[i] + b.light[i]) * 0.5F;
    return mean;
}

Sights sights_of(const Setup& setup, const Report& report, SightDetail detail) {
    return {eye_sight(setup, report, Eye::left, detail),
            eye_sight(setup, report, Eye::right, detail), one_eye_sight(setup, report, detail)};
}

SightFrame frame_of(const Sights& sights, const SightRequest& request) {
    SightFrame frame;
    frame.pixels = request.pixels;
    frame.shown = field_margin * to_radians(sights[0].apparent_field).value / request.closer;
    const EyeSight& widest = sights[2];
    const double field =
        widest.stop_radius / (widest.magnification() * widest.eyepiece_focal_length);
    frame.sky_radius = 1.1 * field;
    for (const EyeSight& sight : sights)
        frame.faintest = std::max(frame.faintest, sight.limiting);
    frame.tick = board_tick(sights[0].stop_radius
                            / (sights[0].magnification() * sights[0].eyepiece_focal_length));
    return frame;
}

double fitting_closeness(const Sights& sights, const SightScene& scene) {
    const double whole = to_radians(sights[0].apparent_field).value;
    const double ring = airy_angle(sights[0].aperture).value;
    double wanted = whole;
    if (scene.subject == SightSubject::moon) {
        wanted = 3.2 * moon_radius * sights[0].magnification();
    } else if (scene.subject == SightSubject::planet) {
        wanted = 2.5 * scene.planet_arcsec * arcsecond * sights[0].magnification();
    } else if (scene.subject == SightSubject::lunar_edge) {
        wanted = 24 * 60 * arcsecond * sights[0].magnification();
    } else if (scene.subject == SightSubject::double_star) {
        wanted = std::max(4 * scene.separation_arcsec * arcsecond, 16 * ring)
                 * sights[0].magnification();
    }
    double blur = 0;  // farthest green ray of the middle, at the eye: a wide disc needs more room
    for (const glm::dvec2& ray : sights[0].nodes[0][primary_wavelength])
        blur = std::max(blur, glm::length(ray) / sights[0].eyepiece_focal_length.value);
    // The Moon stands still in its picture while it blurs, until the blur is as wide as the room about it.
    if (scene.subject == SightSubject::moon) {
        const double disc = 2 * moon_radius * sights[0].magnification();
        return std::clamp(whole / std::max(wanted, disc + 1.4 * blur), 1.0, 200.0);
    }
    return std::clamp(whole / (wanted + 2.2 * blur), 1.0, 200.0);
}

namespace {

std::uint8_t srgb(double linear) {
    return static_cast<std::uint8_t>(
        std::lround(255 * srgb_from_linear(std::clamp(linear, 0.0, 1.0))));
}

float brightest(const std::vector<SightLight>& pictures) {
    float most = 1e-20F;
    for (const SightLight& picture : pictures) {
        for (const glm::vec3& light : picture.light)
            most = std::max({most, light.r, light.g, light.b});
    }
    return most;
}

std::vector<SightLight> pictures_of(const Sights& sights, const SightRequest& request) {
    const SightFrame frame = frame_of(sights, request);
    const auto drawn = [&](std::size_t which) {
        return draw_light(sights[which], request.scene, frame);
    };
    switch (request.layout) {
    case SightLayout::left_and_right: return {drawn(0), drawn(1)};
    case SightLayout::merged: return {mean_of(drawn(0), drawn(1))};
    case SightLayout::one_and_two: return {drawn(2), mean_of(drawn(0), drawn(1))};
    }
    return {};
}

}  // namespace

SightImage draw_sight(const Sights& sights, const SightRequest& request) {
    const std::vector<SightLight> pictures = pictures_of(sights, request);
    const bool is_field = request.scene.subject == SightSubject::stars;
    // The brightest stars of a field may glare, so that faint ones are seen.
    const float white = brightest(pictures) * (is_field ? 0.3F : 1.0F);
    constexpr std::uint8_t ground = 26;  // outside the field stop, so that its edge is seen
    const double ring = request.pixels / 2.0 / field_margin * request.closer;
    SightImage image{request.pixels * static_cast<int>(pictures.size()), request.pixels, {}};
    image.rgba.reserve(static_cast<std::size_t>(image.width * image.height * 4));
    for (int row = 0; row < request.pixels; ++row) {
        for (const SightLight& picture : pictures) {
            for (int column = 0; column < request.pixels; ++column) {
                const double from_middle = std::hypot(column + 0.5 - request.pixels / 2.0,
                                                      row + 0.5 - request.pixels / 2.0);
                for (int channel = 0; channel < 3; ++channel) {
                    const double light =
                        static_cast<double>(picture.at(column, row)[channel] / white);
                    image.rgba.push_back(
                        from_middle > ring ? ground : srgb(is_field ? std::sqrt(light) : light));
                }
                image.rgba.push_back(255);
            }
        }
    }
    return image;
}

}  // namespace beamfork
