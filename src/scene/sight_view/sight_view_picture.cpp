#include "scene/sight_view/sight_view_picture.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "scene/sight_view/sight_view_blur.hpp"
#include "study/image/white_light.hpp"

namespace beamfork {

namespace {

// Light is blurred as CIE X, Y and Z, each a mixture of wavelengths that no eye can take apart, and shown as red, green
// and blue: what the eye hardly sees of blue and red far from focus stays as faint in the picture.
// Linear sRGB by IEC 61966-2-1.
const glm::mat3 xyz_from_rgb{
    {0.4124F, 0.2126F, 0.0193F}, {0.3576F, 0.7152F, 0.1192F}, {0.1805F, 0.0722F, 0.9505F}};

constexpr std::array<double WhiteLine::*, 3> matching{&WhiteLine::x, &WhiteLine::y, &WhiteLine::z};

// Which wavelengths the rays of a channel have: each as often as it counts in the channel's light, spread over the
// pupil by the multiples of an irrational number.
std::vector<std::size_t> lines_of(std::size_t channel) {
    constexpr int rays = 240;
    double sum = 0;
    for (const WhiteLine& line : white_lines)
        sum += line.*matching[channel];
    std::vector<std::size_t> lines;
    for (int i = 0; i < rays; ++i) {
        double left = sum * std::fmod((i + 0.5) * std::numbers::sqrt2, 1.0);
        std::size_t line = 0;
        while (line + 1 < white_lines.size() && left > white_lines[line].*matching[channel])
            left -= white_lines[line++].*matching[channel];
        lines.push_back(line);
    }
    return lines;
}

Micrometres mean_wavelength(std::size_t channel) {
    double sum = 0;
    Micrometres mean{0};
    for (const WhiteLine& line : white_lines) {
        sum += line.*matching[channel];
        mean = mean + line.wavelength * (line.*matching[channel]);
    }
    return mean / sum;
}

constexpr std::size_t node_count = 5;

// Pixels of a square picture about the middle of the field, x right, y up in apparent angle.
struct Grid {
    int side = 0;
    double scale = 1;  // pixels per radian
    [[nodiscard]] glm::dvec2 apparent(double column, double row) const {
        return glm::dvec2{column - side / 2.0, side / 2.0 - row} / scale;
    }
    [[nodiscard]] glm::dvec2 place(glm::dvec2 apparent) const {
        return {side / 2.0 + apparent.x * scale, side / 2.0 - apparent.y * scale};
    }
};

// Of one channel, by node.
struct Kernels {
    std::array<BlurKernel, node_count> of;
    int reach = 0;
};

bool is_points(const SightScene& scene) {
    return scene.subject == SightSubject::stars || scene.subject == SightSubject::double_star;
}

// The spread of one node and channel in pixels of that scale.
std::vector<glm::dvec2>
spots_of(const EyeSight& sight, std::size_t node, std::size_t channel, double scale) {
    auto spots = noticed_spread(sight, sight.nodes[node], lines_of(channel));
    for (glm::dvec2& spot : spots)
        spot *= scale / sight.eyepiece_focal_length;
    return spots;
}

// Diffraction and limits of one channel; the spots are put in by node.
BlurSource blur_of(const EyeSight& sight, std::size_t channel, const Grid& grid) {
    const double wavelength = to_millimetres(mean_wavelength(channel)).value;
    const double dark_ring = first_dark_x / std::numbers::pi * wavelength / sight.aperture;
    return {{}, dark_ring * sight.magnification() * grid.scale, sight.obstruction, 2 * grid.side};
}

int greatest_reach(const EyeSight& sight, std::size_t channel, const Grid& grid) {
    int reach = 0;
    BlurSource source = blur_of(sight, channel, grid);
    for (std::size_t node = 0; node < node_count; ++node) {
        const auto spots = spots_of(sight, node, channel, grid.scale);
        source.spots = spots;
        reach = std::max(reach, reach_of(source));
    }
    return reach;
}

Kernels kernels_of(const EyeSight& sight, std::size_t channel, const Grid& grid) {
    Kernels kernels;
    BlurSource source = blur_of(sight, channel, grid);
    for (std::size_t node = 0; node < node_count; ++node) {
        const auto spots = spots_of(sight, node, channel, grid.scale);
        source.spots = spots;
        kernels.of[node] = blur_kernel(source);
        kernels.reach = std::max(kernels.reach, kernels.of[node].reach);
    }
    return kernels;
}

// How much of each node's spread a place of the field stop has.
std::array<float, node_count> node_weights(const EyeSight& sight, glm::dvec2 stop) {
    std::array<float, node_count> weights{1, 0, 0, 0, 0};
    const double r2 = glm::dot(stop, stop);
    if (r2 == 0) return weights;
    const double reach = node_radius * sight.stop_radius;
    const double outer = std::min(1.0, r2 / (reach * reach));
    weights[0] = static_cast<float>(1 - outer);
    weights[stop.x > 0 ? 1 : 3] = static_cast<float>(outer * stop.x * stop.x / r2);
    weights[stop.y > 0 ? 2 : 4] = static_cast<float>(outer * stop.y * stop.y / r2);
    return weights;
}

using Planes = std::array<std::vector<float>, 3>;

// Mean light of one pixel of an extended subject, from `fine` squared places of it.
glm::vec3 pixel_light(const EyeSight& sight,
                      const SightScene& scene,
                      double tick,
                      const Grid& grid,
                      glm::ivec2 pixel,
                      int fine) {
    glm::vec3 light{0};
    for (int k = 0; k < fine * fine; ++k) {
        const int line = k / fine;
        const double x = pixel.x + (k % fine + 0.5) / fine;
        const double y = pixel.y + (line + 0.5) / fine;
        const glm::dvec2 stop = stop_of_apparent(sight, grid.apparent(x, y));
        if (glm::length(stop) > 1.25 * sight.stop_radius) continue;
        light += sky_light(scene, sky_of_stop(sight, stop), tick);
    }
    return light / static_cast<float>(fine * fine);
}

// The subject as an eye without any blur would have it; each pixel of the finished picture has four samples.
Planes draw_sharp(const EyeSight& sight,
                  const SightScene& scene,
                  const SightFrame& frame,
                  const Grid& grid) {
    Planes planes;
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
void add_stars(Planes& planes,
               const EyeSight& sight,
               const SightScene& scene,
               const SightFrame& frame,
               const Grid& grid) {
    const double gathered = sight.aperture * sight.aperture * sight.light;
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

void spread_pixel(
    std::vector<float>& out, int side, int column, int row, float light, const BlurKernel& kernel) {
    const int first_row = std::max(0, row - kernel.reach);
    const int last_row = std::min(side - 1, row + kernel.reach);
    const int first = std::max(0, column - kernel.reach);
    const int last = std::min(side - 1, column + kernel.reach);
    for (int y = first_row; y <= last_row; ++y) {
        const float* in =
            &kernel.share[static_cast<std::size_t>((y - row + kernel.reach) * kernel.side())];
        float* to = &out[static_cast<std::size_t>(y * side)];
        for (int x = first; x <= last; ++x)
            to[x] += light * in[x - column + kernel.reach];
    }
}

// Every bright pixel spreads by what its place of the field has.
std::vector<float> blurred(const std::vector<float>& sharp,
                           const EyeSight& sight,
                           const Grid& grid,
                           const Kernels& kernels) {
    std::vector<float> out(sharp.size(), 0);
    constexpr float least_weight = 0.02F;
    for (int row = 0; row < grid.side; ++row) {
        for (int column = 0; column < grid.side; ++column) {
            const float light = sharp[static_cast<std::size_t>(row * grid.side + column)];
            if (light == 0) continue;
            auto weights = node_weights(
                sight, stop_of_apparent(sight, grid.apparent(column + 0.5, row + 0.5)));
            float kept = 0;
            for (float& weight : weights) {
                if (weight < least_weight) weight = 0;
                kept += weight;
            }
            for (std::size_t node = 0; node < node_count; ++node) {
                if (weights[node] == 0) continue;
                spread_pixel(out, grid.side, column, row, light * weights[node] / kept,
                             kernels.of[node]);
            }
        }
    }
    return out;
}

float sample(const std::vector<float>& plane, int side, glm::dvec2 at) {
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
    Grid grid;
    std::vector<float> plane;
};

// A wide blur needs few pixels: a channel is made coarser until its blur is a few pixels wide.
std::array<Grid, 3>
grids_for(const EyeSight& sight, const SightScene& scene, const SightFrame& frame) {
    const int widest = is_points(scene) ? 48 : 9;
    std::array<Grid, 3> grids;
    for (std::size_t channel = 0; channel < 3; ++channel) {
        Grid& grid = grids[channel];
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
    const std::array<Grid, 3> grids = grids_for(sight, scene, frame);
    std::array<Channel, 3> channels;
    Planes sharp;
    Grid drawn;
    for (std::size_t channel = 0; channel < 3; ++channel) {
        const Kernels kernels = kernels_of(sight, channel, grids[channel]);
        // Room for light from beside the picture, the same for channels that need about as much.
        const int room = std::min((kernels.reach + 8) / 8 * 8, grids[channel].side);
        const Grid grid{grids[channel].side + 2 * room, grids[channel].scale};
        if (grid.side != drawn.side || grid.scale != drawn.scale) {
            sharp = draw_sharp(sight, scene, frame, grid);
            add_stars(sharp, sight, scene, frame, grid);
            drawn = grid;
        }
        channels[channel] = {grid, blurred(sharp[channel], sight, grid, kernels)};
    }
    return channels;
}

}  // namespace

SightLight draw_light(const EyeSight& sight, const SightScene& scene, const SightFrame& frame) {
    const std::array<Channel, 3> channels = channels_of(sight, scene, frame);
    const glm::mat3 rgb_from_xyz = glm::inverse(xyz_from_rgb);
    SightLight picture{frame.pixels, {}};
    picture.light.reserve(static_cast<std::size_t>(frame.pixels * frame.pixels));
    const Grid fine{frame.pixels, frame.pixels / frame.shown};
    for (int row = 0; row < frame.pixels; ++row) {
        for (int column = 0; column < frame.pixels; ++column) {
            const glm::dvec2 apparent = fine.apparent(column + 0.5, row + 0.5);
            const glm::dvec2 at = stop_of_apparent(sight, apparent) / sight.stop_radius;
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
    const double ring = 1.22 * 0.000546 / sights[0].aperture;
    double wanted = whole;
    if (scene.subject == SightSubject::planet) {
        wanted = 2.5 * scene.planet_arcsec * arcsecond * sights[0].magnification();
    } else if (scene.subject == SightSubject::lunar_edge) {
        wanted = 24 * 60 * arcsecond * sights[0].magnification();
    } else if (scene.subject == SightSubject::double_star) {
        wanted = std::max(4 * scene.separation_arcsec * arcsecond, 16 * ring)
                 * sights[0].magnification();
    }
    double blur = 0;  // farthest green ray of the middle, at the eye: a wide disc needs more room
    for (const glm::dvec2& ray : sights[0].nodes[0][primary_wavelength])
        blur = std::max(blur, glm::length(ray) / sights[0].eyepiece_focal_length);
    return std::clamp(whole / (wanted + 2.2 * blur), 1.0, 200.0);
}

namespace {

std::uint8_t srgb(double linear) {
    const double bounded = std::clamp(linear, 0.0, 1.0);
    const double encoded =
        bounded <= 0.0031308 ? 12.92 * bounded : 1.055 * std::pow(bounded, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(255 * encoded));
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
