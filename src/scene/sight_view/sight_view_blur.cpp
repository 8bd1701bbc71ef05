#include "scene/sight_view/sight_view_blur.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace beamfork {

namespace {

double two_j1_over_x(double x) {
    if (x < 1e-4) return 1 - x * x / 8;
    return 2 * std::cyl_bessel_j(1.0, x) / x;
}

constexpr double smallest_ring = 0.4;  // pixels; below it the pattern lies within one pixel
constexpr double rings_kept = 4;

// By distance from the middle, in 64 steps a dark ring.
class RadialLight {
public:
    explicit RadialLight(double obstruction) {
        for (std::size_t i = 0; i < table_.size(); ++i)
            table_[i] =
                diffraction_light(first_dark_x * static_cast<double>(i) / steps, obstruction);
    }
    [[nodiscard]] double at(double dark_rings) const {
        const double place = dark_rings * steps;
        const auto low = static_cast<std::size_t>(place);
        if (low + 1 >= table_.size()) return 0;
        return std::lerp(table_[low], table_[low + 1], place - static_cast<double>(low));
    }

private:
    static constexpr double steps = 64;
    std::array<double, 64 * 4 + 40> table_{};
};

BlurKernel diffraction_kernel(const BlurSource& source) {
    BlurKernel kernel;
    if (source.dark_ring < smallest_ring) return kernel;
    kernel.reach = static_cast<int>(std::ceil(rings_kept * source.dark_ring));
    kernel.share.assign(static_cast<std::size_t>(kernel.side() * kernel.side()), 0);
    const RadialLight light(source.obstruction);
    const int fine = source.dark_ring < 6 ? 5 : 1;  // samples across a pixel
    double sum = 0;
    for (int y = 0; y < kernel.side(); ++y) {
        for (int x = 0; x < kernel.side(); ++x) {
            double pixel = 0;
            for (int k = 0; k < fine * fine; ++k) {
                const int line = k / fine;
                const double dx = x - kernel.reach + (k % fine + 0.5) / fine - 0.5;
                const double dy = y - kernel.reach + (line + 0.5) / fine - 0.5;
                pixel += light.at(std::hypot(dx, dy) / source.dark_ring);
            }
            kernel.share[static_cast<std::size_t>(y * kernel.side() + x)] =
                static_cast<float>(pixel);
            sum += pixel;
        }
    }
    for (float& share : kernel.share)
        share = static_cast<float>(share / sum);
    return kernel;
}

double farthest(std::span<const glm::dvec2> spots) {
    double far = 0;
    for (const glm::dvec2& spot : spots)
        far = std::max({far, std::abs(spot.x), std::abs(spot.y)});
    return far;
}

// Half the gap between neighbouring rays of a disc with the rays' root-mean-square radius, pixels: each ray
// stands for a patch as wide as that, so that a wide disc is even.
double patch_of(std::span<const glm::dvec2> spots) {
    if (spots.size() < 12) return 0;
    const auto count = static_cast<double>(spots.size());
    glm::dvec2 mean{0};
    double square = 0;
    for (const glm::dvec2& spot : spots) {
        mean += spot / count;
        square += glm::dot(spot, spot) / count;
    }
    const double spread = std::max(0.0, square - glm::dot(mean, mean));
    return 0.5 * std::sqrt(2 * std::numbers::pi * spread / count);
}

constexpr double smallest_patch = 0.5;  // pixels; below it rays lie close enough
constexpr double patch_reach = 2.5;

int spot_reach(const BlurSource& source) {
    const double patch = patch_of(source.spots);
    const double more = patch > smallest_patch ? patch_reach * patch : 0;
    return std::min(source.limit, static_cast<int>(std::ceil(farthest(source.spots) + more)));
}

// Shares of one ray along one axis: a bell as wide as its patch, or its two nearest pixels.
void share_along(std::vector<float>& line, double at, double patch) {
    if (patch > smallest_patch) {
        const double norm = 1 / (patch * std::sqrt(2 * std::numbers::pi));
        for (std::size_t i = 0; i < line.size(); ++i) {
            const double off = (static_cast<double>(i) - at) / patch;
            line[i] = static_cast<float>(norm * std::exp(-off * off / 2));
        }
        return;
    }
    std::fill(line.begin(), line.end(), 0.0F);
    const double low = std::floor(at);
    for (const double pixel : {low, low + 1}) {
        if (pixel < 0 || pixel >= static_cast<double>(line.size())) continue;
        line[static_cast<std::size_t>(pixel)] = static_cast<float>(1 - std::abs(at - pixel));
    }
}

BlurKernel spot_kernel(const BlurSource& source) {
    BlurKernel kernel;
    if (source.spots.empty()) return kernel;
    const double patch = patch_of(source.spots);
    kernel.reach = spot_reach(source);
    const auto side = static_cast<std::size_t>(kernel.side());
    kernel.share.assign(side * side, 0);
    std::vector<float> across(side);
    std::vector<float> down(side);
    const float each = 1.0F / static_cast<float>(source.spots.size());
    for (const glm::dvec2& spot : source.spots) {
        share_along(across, kernel.reach + spot.x, patch);
        share_along(down, kernel.reach - spot.y, patch);
        for (std::size_t y = 0; y < side; ++y) {
            if (down[y] < 1e-6F) continue;
            for (std::size_t x = 0; x < side; ++x)
                kernel.share[y * side + x] += each * down[y] * across[x];
        }
    }
    return kernel;
}

}  // namespace

double diffraction_light(double x, double obstruction) {
    const double e2 = obstruction * obstruction;
    const double amplitude = (two_j1_over_x(x) - e2 * two_j1_over_x(obstruction * x)) / (1 - e2);
    return amplitude * amplitude;
}

int reach_of(const BlurSource& source) {
    const double rings = source.dark_ring < smallest_ring ? 0 : rings_kept * source.dark_ring;
    return spot_reach(source) + static_cast<int>(std::ceil(rings));
}

BlurKernel blur_kernel(const BlurSource& source) {
    const BlurKernel spots = spot_kernel(source);
    const BlurKernel pattern = diffraction_kernel(source);
    if (pattern.reach == 0) return spots;
    BlurKernel both;
    both.reach = spots.reach + pattern.reach;
    const auto side = static_cast<std::size_t>(both.side());
    both.share.assign(side * side, 0);
    for (int y = 0; y < spots.side(); ++y) {
        for (int x = 0; x < spots.side(); ++x) {
            const float weight = spots.share[static_cast<std::size_t>(y * spots.side() + x)];
            if (weight == 0) continue;
            for (int row = 0; row < pattern.side(); ++row) {
                float* out = &both.share[static_cast<std::size_t>(y + row) * side
                                         + static_cast<std::size_t>(x)];
                const float* in = &pattern.share[static_cast<std::size_t>(row * pattern.side())];
                for (int column = 0; column < pattern.side(); ++column)
                    out[column] += weight * in[column];
            }
        }
    }
    return both;
}

}  // namespace beamfork
