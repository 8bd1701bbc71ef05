#include "scene/sight_view/field_blur.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "scene/sight_view/sight_colour.hpp"

namespace beamfork {

namespace {

// The spread of one node and channel in pixels of that scale.
std::vector<glm::dvec2>
spots_of(const EyeSight& sight, std::size_t node, std::size_t channel, double scale) {
    auto spots = noticed_spread(sight, sight.nodes[node], lines_of(channel));
    for (glm::dvec2& spot : spots)
        spot *= scale / sight.eyepiece_focal_length.value;
    return spots;
}

// Diffraction and limits of one channel; the spots are put in by node.
BlurSource blur_of(const EyeSight& sight, std::size_t channel, const SightGrid& grid) {
    const Millimetres wavelength = to_millimetres(mean_wavelength(channel));
    const double dark_ring = first_dark_x / std::numbers::pi * wavelength / sight.aperture;
    return {{}, dark_ring * sight.magnification() * grid.scale, sight.obstruction, 2 * grid.side};
}

// How much of each node's spread a place of the field stop has.
std::array<float, blur_nodes> node_weights(const EyeSight& sight, glm::dvec2 stop) {
    std::array<float, blur_nodes> weights{1, 0, 0, 0, 0};
    const double r2 = glm::dot(stop, stop);
    if (r2 == 0) return weights;
    const double reach = node_radius * sight.stop_radius.value;
    const double outer = std::min(1.0, r2 / (reach * reach));
    weights[0] = static_cast<float>(1 - outer);
    weights[stop.x > 0 ? 1 : 3] = static_cast<float>(outer * stop.x * stop.x / r2);
    weights[stop.y > 0 ? 2 : 4] = static_cast<float>(outer * stop.y * stop.y / r2);
    return weights;
}

void spread_pixel(
    SightPlane& out, int side, int column, int row, float light, const BlurKernel& kernel) {
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

}  // namespace

int greatest_reach(const EyeSight& sight, std::size_t channel, const SightGrid& grid) {
    int reach = 0;
    BlurSource source = blur_of(sight, channel, grid);
    for (std::size_t node = 0; node < blur_nodes; ++node) {
        const auto spots = spots_of(sight, node, channel, grid.scale);
        source.spots = spots;
        reach = std::max(reach, reach_of(source));
    }
    return reach;
}

FieldBlur field_blur(const EyeSight& sight, std::size_t channel, const SightGrid& grid) {
    FieldBlur blur;
    BlurSource source = blur_of(sight, channel, grid);
    for (std::size_t node = 0; node < blur_nodes; ++node) {
        const auto spots = spots_of(sight, node, channel, grid.scale);
        source.spots = spots;
        blur.nodes[node] = blur_kernel(source);
        blur.reach = std::max(blur.reach, blur.nodes[node].reach);
    }
    return blur;
}

SightPlane blurred(const SightPlane& sharp,
                   const EyeSight& sight,
                   const SightGrid& grid,
                   const FieldBlur& blur) {
    SightPlane out(sharp.size(), 0);
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
            for (std::size_t node = 0; node < blur_nodes; ++node) {
                if (weights[node] == 0) continue;
                spread_pixel(out, grid.side, column, row, light * weights[node] / kept,
                             blur.nodes[node]);
            }
        }
    }
    return out;
}

}  // namespace beamfork
