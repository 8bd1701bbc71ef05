#include "study/image/image_quality.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "study/focus/diffraction.hpp"
#include "study/image/coma_correction.hpp"
#include "study/image/glass_correction.hpp"

namespace beamfork {

namespace {

using Colours = std::array<Wavefront, wavelength_count>;
using Weighted = std::array<WeightedWavefront, wavelength_count>;

// All that one eye's field points are traced with.
struct Bench {
    const Train& train;
    const EyePath& path;
    EyePath open;
    std::vector<GlassCorrection> corrections;
    std::vector<ComaCorrection> coma;
    std::vector<glm::dvec2> pupil;
    bool with_spread = true;
};

Colours trace_colours(const Bench& bench,
                      FieldSlope field,
                      const EyePath& path,
                      const std::vector<glm::dvec2>& pupil) {
    const std::array<glm::dvec2, 1> middle{glm::dvec2{0}};
    const Wavefront chief =
        trace_wavefront(bench.train, bench.open, field, middle, primary_wavelength);
    Colours colours;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        colours[w] = trace_wavefront(bench.train, path, field, pupil, w);
        if (chief.rays.empty()) continue;
        correct(colours[w], bench.corrections, w, chief.rays.front().along);
        take_coma(colours[w], bench.coma, bench.train, field, chief.rays.front().along);
    }
    return colours;
}

Weighted weighted(const Colours& colours, EyeState state) {
    const PerWavelength weight = eye_response(state);
    Weighted result;
    for (std::size_t w = 0; w < wavelength_count; ++w)
        result[w] = {&colours[w], weight[w]};
    return result;
}

// Where a ring of rays round the axis comes together, behind the field stop.
Millimetres ring_focus(const Wavefront& ring) {
    double cross = 0;
    double square = 0;
    glm::dvec2 middle{0};
    glm::dvec2 lean{0};
    const auto count = static_cast<double>(ring.rays.size());
    const auto slope_of = [](const WavefrontRay& ray) {
        return glm::dvec2(ray.along) / ray.along.z;
    };
    for (const WavefrontRay& ray : ring.rays) {
        middle += (glm::dvec2(ray.at) - ray.at.z * slope_of(ray)) / count;
        lean += slope_of(ray) / count;
    }
    for (const WavefrontRay& ray : ring.rays) {
        const glm::dvec2 slope = slope_of(ray) - lean;
        cross += glm::dot(glm::dvec2(ray.at) - ray.at.z * slope_of(ray) - middle, slope);
        square += glm::dot(slope, slope);
    }
    return {square > 0 ? -cross / square : 0};
}

Colours trace_ring(const Bench& bench, double zone) {
    std::vector<glm::dvec2> ring = rim(8);
    for (glm::dvec2& place : ring)
        place *= zone;
    return trace_colours(bench, {0, 0}, bench.open, ring);
}

glm::dvec2 landing(const WavefrontRay& ray, const Point& focus) {
    return glm::dvec2(ray.at) + (focus.z - ray.at.z) / ray.along.z * glm::dvec2(ray.along);
}

// Places where the rays land in the plane of the focus, about their weighted middle.
void find_spots(PointImage& image, const Weighted& colours, const Point& focus) {
    glm::dvec2 middle{0};
    double weights = 0;
    for (const auto& [wavefront, weight] : colours) {
        for (const WavefrontRay& ray : wavefront->rays)
            middle += weight * landing(ray, focus);
        weights += weight * static_cast<double>(wavefront->rays.size());
    }
    middle /= weights;
    double blur = 0;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        for (const WavefrontRay& ray : colours[w].wavefront->rays) {
            const glm::dvec2 off = landing(ray, focus) - middle;
            image.spots[w].push_back(off);
            blur += colours[w].weight * glm::dot(off, off);
        }
    }
    image.spot_rms = {std::sqrt(blur / weights)};
}

// Chief rays in the plane of the focus, against the green one.
void find_lateral_colour(PointImage& image,
                         const Bench& bench,
                         FieldSlope field,
                         const Point& focus) {
    const std::array<glm::dvec2, 1> middle{glm::dvec2{0}};
    std::array<glm::dvec2, wavelength_count> landed{};
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        const Wavefront chief = trace_wavefront(bench.train, bench.open, field, middle, w);
        if (!chief.rays.empty()) landed[w] = landing(chief.rays.front(), focus);
    }
    image.blue_shift = landed.front() - landed[primary_wavelength];
    image.red_shift = landed.back() - landed[primary_wavelength];
}

constexpr int spread_cells = 29;
constexpr double cell_in_airy_units =
    0.28;  // of wavelength times f-number: the grid reaches four of them

void find_spread(PointImage& image,
                 const EyeImage& eye,
                 const Weighted& colours,
                 const Point& focus) {
    const Millimetres unit = eye.airy_radius / airy_waves;
    image.spread =
        point_spread(colours, focus, eye.focal_ratio, spread_cells, cell_in_airy_units * unit);
    image.energy_in_disc = energy_within(image.spread, eye.airy_radius);
    Millimetres low{0};
    Millimetres high = image.spread.half_width();
    if (energy_within(image.spread, high) < 0.5) return;
    for (int step = 0; step < 10; ++step) {
        const Millimetres middle = (low + high) / 2;
        (energy_within(image.spread, middle) < 0.5 ? low : high) = middle;
    }
    image.half_energy_radius = high;
}

bool is_formed(const Colours& colours) {
    return std::all_of(colours.begin(), colours.end(), [](const Wavefront& wavefront) {
        return wavefront.rays.size() >= fewest_rays;
    });
}

Bench bench_of(const Setup& setup, const Train& train, Eye eye, ImageEffort effort) {
    const EyePath& path = train.path(eye);
    return {.train = train,
            .path = path,
            .open = without_stops(path),
            .corrections = glass_corrections(setup, path),
            .coma = coma_corrections(setup, path),
            .pupil = sunflower(effort.rays),
            .with_spread = effort.with_spread};
}

PointImage image_at(const Bench& bench, const EyeImage& eye, FieldSlope field, glm::dvec2 at) {
    PointImage image;
    image.at = at;
    const Colours colours = trace_colours(bench, field, bench.path, bench.pupil);
    image.is_formed = is_formed(colours);
    if (!image.is_formed) return image;
    const Weighted day = weighted(colours, EyeState::day);
    const Weighted night = weighted(colours, EyeState::night);
    const std::array green{day[primary_wavelength]};
    const Point sphere = best_sphere_centre(green);
    const auto [focus, day_peak] = sharpest(day, eye.depth_of_focus);
    image.focus = {focus.z};
    image.day_peak = day_peak;
    image.night_peak = sharpest(night, eye.depth_of_focus).peak;
    image.green_peak = sharpest(green, eye.depth_of_focus).peak;
    image.rms_waves = rms_waves(*green.front().wavefront, sphere);
    image.aberrations = aberrations(*green.front().wavefront, sphere);
    find_spots(image, day, focus);
    find_lateral_colour(image, bench, field, focus);
    if (bench.with_spread) find_spread(image, eye, day, focus);
    return image;
}

// Error of the green wavefront from few rays, to choose a place by; endless where no image is formed.
double rough_error(const Bench& bench, FieldSlope field) {
    Wavefront green =
        trace_wavefront(bench.train, bench.path, field, sunflower(36), primary_wavelength);
    if (green.rays.size() < fewest_rays) return std::numeric_limits<double>::infinity();
    take_coma(green, bench.coma, bench.train, field, green.rays.front().along);
    const std::array colours{WeightedWavefront{&green, 1}};
    return rms_waves(green, best_sphere_centre(colours));
}

// What holds for the whole beam: its cone, its focus by zone and by colour.
EyeImage beam_of(const Bench& bench) {
    EyeImage eye;
    eye.eye = bench.path.eye;
    eye.is_corrected = !bench.corrections.empty();
    const Colours middle = trace_ring(bench, 0.01);
    const Colours edge = trace_ring(bench, 1 - 1e-9);
    eye.focal_ratio = focal_ratio_of(edge[primary_wavelength]);
    eye.airy_radius = airy_radius(eye.focal_ratio);
    eye.depth_of_focus = depth_of_focus(eye.focal_ratio);
    const Millimetres green = ring_focus(middle[primary_wavelength]);
    eye.spherical = ring_focus(edge[primary_wavelength]) - green;
    eye.blue_shift = ring_focus(middle.front()) - green;
    eye.red_shift = ring_focus(middle.back()) - green;
    eye.perfect_resolution =
        to_arcseconds(airy_angle(Millimetres{2 * bench.train.objective_radius}));
    return eye;
}

}  // namespace

std::optional<double> EyeImage::widening(const PointImage& image) const {
    // Of the Airy pattern half lies within 0.5348 wavelength N: 1 - J0^2 - J1^2 = 1/2 (Lord Rayleigh, 1881,
    // from memory; the root by mpmath).
    if (!image.half_energy_radius) return std::nullopt;
    return *image.half_energy_radius / (airy_radius / airy_waves * 0.53483);
}

ImageFault main_fault(const PointImage& image) {
    constexpr double nothing_lost = 0.98;
    if (!image.is_formed || image.day_peak > nothing_lost) return ImageFault::nothing;
    if (image.green_peak - image.day_peak > 1 - image.green_peak) return ImageFault::colour;
    const Aberrations& a = image.aberrations;
    const double largest = std::max({a.spherical_rms, a.coma_rms, a.astigmatism_rms});
    if (largest < image.rms_waves / 2) return ImageFault::other;
    if (largest == a.spherical_rms) return ImageFault::spherical;
    return largest == a.coma_rms ? ImageFault::coma : ImageFault::astigmatism;
}

EyeImage image_quality(const Setup& setup, const Train& train, Eye eye, ImageEffort effort) {
    const EyePath& path = train.path(eye);
    const Bench bench = bench_of(setup, train, eye, effort);
    EyeImage result = beam_of(bench);
    const FieldMap map = field_map(train, eye);
    const double radius = inner_radius(path.surfaces.back().aperture);
    result.axis = image_at(bench, result, {0, 0}, {0, 0});
    constexpr double same_error = 1e-6;  // waves: places that differ by less are alike
    double worst = -1;
    glm::dvec2 place{1, 0};
    for (const glm::dvec2& at : rim(4)) {
        const double error = rough_error(bench, map.slope_at(at * radius));
        if (error <= worst + same_error) continue;
        worst = error;
        place = at;
    }
    result.edge = image_at(bench, result, map.slope_at(place * radius), place);
    return result;
}

std::optional<double>
day_peak_on_axis(const Setup& setup, const Train& train, Eye eye, ImageEffort effort) {
    const Bench bench = bench_of(setup, train, eye, effort);
    const Colours colours = trace_colours(bench, {0, 0}, bench.path, bench.pupil);
    if (!is_formed(colours)) return std::nullopt;
    const Weighted day = weighted(colours, EyeState::day);
    return sharpest(day, beam_of(bench).depth_of_focus).peak;
}

}  // namespace beamfork
