#include "study/image/wavefront.hpp"

#include <cmath>

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

namespace {

Direction mean_direction(const Wavefront& wavefront) {
    Direction sum{0.0};
    for (const WavefrontRay& ray : wavefront.rays)
        sum += ray.along;
    return sum / static_cast<double>(wavefront.rays.size());
}

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

double strehl(std::span<const WeightedWavefront> colours, const Point& focus) {
    double sum = 0;
    double weights = 0;
    std::vector<double> waves;
    for (const auto& [wavefront, weight] : colours) {
        const double piston = path_to(wavefront->rays.front(), focus);
        const double wavelength = to_millimetres(wavefront->wavelength).value;
        waves.clear();
        for (const WavefrontRay& ray : wavefront->rays)
            waves.push_back((path_to(ray, focus) - piston) / wavelength);
        const auto count = static_cast<double>(waves.size());
        sum += weight * sum_of_waves(waves).squared() / (count * count);
        weights += weight;
    }
    return sum / weights;
}

Sharpest sharpest(std::span<const WeightedWavefront> colours, Millimetres depth) {
    Sharpest best;
    best.at = best_sphere_centre(colours);
    best.peak = strehl(colours, best.at);
    const auto consider = [&](const Point& place) {
        const double there = strehl(colours, place);
        if (there <= best.peak) return false;
        best = {place, there};
        return true;
    };
    for (std::size_t i = 0; i < colours.size(); ++i) {
        constexpr double hardly_seen = 0.05;  // of the heaviest colour
        if (colours.size() > 1 && colours[i].weight > hardly_seen)
            consider(best_sphere_centre(colours.subspan(i, 1)));
    }
    const Direction along = glm::normalize(mean_direction(*colours.front().wavefront));
    for (double step = depth.value / 2; step > depth.value / 48; step /= 2) {
        const Point from = best.at;
        if (!consider(from + step * along)) consider(from - step * along);
    }
    return best;
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
