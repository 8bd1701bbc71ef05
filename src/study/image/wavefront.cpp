#include "study/image/wavefront.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "trace/plane_waves.hpp"

namespace beamfork {

Wavefront trace_wavefront(const Train& train,
                          const EyePath& path,
                          FieldSlope field,
                          std::span<const glm::dvec2> pupil,
                          std::size_t wavelength) {
    Wavefront wavefront;
    wavefront.wavelength = traced_wavelengths[wavelength];
    wavefront.sent = pupil.size();
    wavefront.rays.reserve(pupil.size());
    const BundleEnds ends = BundleTracer(path, wavelength).trace(bundle_into(train, field, pupil));
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (ends.reached(i))
            wavefront.rays.push_back({pupil[i], ends.at(i), ends.along(i), ends.path[i]});
    }
    return wavefront;
}

Direction mean_direction(const Wavefront& wavefront) {
    Direction sum{0.0};
    for (const WavefrontRay& ray : wavefront.rays)
        sum += ray.along;
    return sum / static_cast<double>(wavefront.rays.size());
}

namespace {

double mean_path(const Wavefront& wavefront, const Point& focus) {
    double sum = 0;
    for (const WavefrontRay& ray : wavefront.rays)
        sum += path_to(ray, focus);
    return sum / static_cast<double>(wavefront.rays.size());
}

}  // namespace

Point best_sphere_centre(std::span<const WeightedWavefront> colours) {
    glm::dmat3 square{0.0};
    glm::dvec3 right{0.0};
    for (const auto& [wavefront, weight] : colours) {
        BEAMFORK_EXPECTS(wavefront->rays.size() >= fewest_rays);
        const Direction middle = mean_direction(*wavefront);
        const double piston = mean_path(*wavefront, Point{0.0});
        const double wavelength = to_millimetres(wavefront->wavelength).value;
        const double scale =
            weight / (wavelength * wavelength * static_cast<double>(wavefront->rays.size()));
        for (const WavefrontRay& ray : wavefront->rays) {
            const glm::dvec3 slope = ray.along - middle;
            square += scale * glm::outerProduct(slope, slope);
            right -= scale * (path_to(ray, Point{0.0}) - piston) * slope;
        }
    }
    return glm::inverse(square) * right;
}

double rms_waves(const Wavefront& wavefront, const Point& focus) {
    const double piston = mean_path(wavefront, focus);
    double sum = 0;
    for (const WavefrontRay& ray : wavefront.rays) {
        const double off = path_to(ray, focus) - piston;
        sum += off * off;
    }
    return std::sqrt(sum / static_cast<double>(wavefront.rays.size()))
           / to_millimetres(wavefront.wavelength).value;
}

namespace {

// Every ray of every colour as a wave about one place, and how it grows along the beam: the peak anywhere on that line
// without the rays themselves.
class WavesAlongBeam {
public:
    WavesAlongBeam(std::span<const WeightedWavefront> colours,
                   const Point& at,
                   const Direction& along) {
        for (const auto& [wavefront, weight] : colours) {
            const double per_mm = 1 / to_millimetres(wavefront->wavelength).value;
            const double piston = path_to(wavefront->rays.front(), at);
            for (const WavefrontRay& ray : wavefront->rays) {
                waves_.push_back((path_to(ray, at) - piston) * per_mm);
                growth_.push_back(glm::dot(along, ray.along) * per_mm);
            }
            weight_.push_back(weight);
            ends_.push_back(waves_.size());
        }
        sum_ = std::accumulate(weight_.begin(), weight_.end(), 0.0);
    }

    // That many mm farther on.
    [[nodiscard]] double peak(double farther) {
        double peak = 0;
        there_.resize(waves_.size());
        for (std::size_t i = 0; i < waves_.size(); ++i)
            there_[i] = waves_[i] + farther * growth_[i];
        std::size_t first = 0;
        for (std::size_t colour = 0; colour < ends_.size(); ++colour) {
            const std::size_t count = ends_[colour] - first;
            const std::span waves(&there_[first], count);
            const auto rays = static_cast<double>(count);
            peak += weight_[colour] * sum_of_waves(waves).squared() / (rays * rays);
            first = ends_[colour];
        }
        return peak / sum_;
    }

private:
    std::vector<double> waves_;
    std::vector<double> growth_;  // per mm
    std::vector<double> there_;
    std::vector<double> weight_;     // by colour
    std::vector<std::size_t> ends_;  // by colour
    double sum_ = 0;
};

// From the nearest to the farthest focus of those colours that weigh most, mm along the beam from `middle`.
std::array<double, 2> stretch_of_foci(std::span<const WeightedWavefront> colours,
                                      const Point& middle,
                                      const Direction& along) {
    constexpr double weighs = 0.5;  // of the heaviest
    double heaviest = 0;
    for (const WeightedWavefront& one : colours)
        heaviest = std::max(heaviest, one.weight);
    std::array<double, 2> stretch{0, 0};
    for (std::size_t i = 0; i < colours.size() && colours.size() > 1; ++i) {
        if (colours[i].weight < weighs * heaviest) continue;
        const double at = glm::dot(best_sphere_centre(colours.subspan(i, 1)) - middle, along);
        stretch = {std::min(stretch[0], at), std::max(stretch[1], at)};
    }
    return stretch;
}

}  // namespace

double strehl(std::span<const WeightedWavefront> colours, const Point& focus) {
    return WavesAlongBeam(colours, focus, Direction{0}).peak(0);
}

Sharpest sharpest(std::span<const WeightedWavefront> colours, Millimetres depth) {
    const Point middle = best_sphere_centre(colours);
    const Direction along = glm::normalize(mean_direction(*colours.front().wavefront));
    WavesAlongBeam beam(colours, middle, along);
    double best = 0;
    double peak = beam.peak(best);
    const auto consider = [&](double place) {
        const double there = beam.peak(place);
        if (!(there > peak)) return false;  // nor one that is no number
        best = place;
        peak = there;
        return true;
    };
    const auto [near, far] = stretch_of_foci(colours, middle, along);
    constexpr int looks = 8;
    for (int i = 0; i <= looks && far > near; ++i)
        consider(near + (far - near) * i / looks);
    for (double step = std::max(depth.value / 2, (far - near) / (2 * looks));
         step > depth.value / 48; step /= 2) {
        while (consider(best + step) || consider(best - step)) {
        }
    }
    return {middle + best * along, peak};
}

double focal_ratio_of(const Wavefront& wavefront) {
    const Direction middle = mean_direction(wavefront);
    const auto count = static_cast<double>(wavefront.rays.size());
    glm::dvec2 centre{0.0};
    for (const WavefrontRay& ray : wavefront.rays)
        centre += ray.pupil / count;
    double turned = 0;
    double spread = 0;
    for (const WavefrontRay& ray : wavefront.rays) {
        const glm::dvec2 slope{ray.along - middle};
        turned += glm::dot(slope, slope);
        spread += glm::dot(ray.pupil - centre, ray.pupil - centre);
    }
    return std::sqrt(spread / turned) / 2;
}

}  // namespace beamfork
