#include "study/image/image_quality.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "study/focus/diffraction.hpp"
#include "study/image/coma_correction.hpp"
#include "study/image/glass_correction.hpp"
#include "study/image/white_light.hpp"

namespace beamfork {

namespace {

// All that one eye's field points are traced with.
struct Bench {
    const Train& train;
    const EyePath& path;
    EyePath open;
    std::vector<GlassCorrection> corrections;
    std::vector<ComaCorrection> coma;
    std::vector<glm::dvec2> pupil;
    Millimetres eyepiece{0};  // focal length
    Millimetres eye_pupil{0};
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
    keep_common_rays(colours);
    return colours;
}

bool is_formed(const Colours& colours) { return colours.front().rays.size() >= fewest_rays; }

// One field point: all rays that arrive, and those of them that enter the eye's pupil.
struct TracedPoint {
    Colours arriving;
    Colours entering;
};

TracedPoint trace_point(const Bench& bench, const EyeImage& eye, FieldSlope field) {
    TracedPoint point{trace_colours(bench, field, bench.path, bench.pupil), {}};
    const double share = bench.eye_pupil * eye.working_focal_ratio / bench.eyepiece;
    if (share >= 1) {
        point.entering = point.arriving;
        return point;
    }
    std::vector<glm::dvec2> middle = bench.pupil;
    for (glm::dvec2& place : middle)
        place *= share;
    point.entering = trace_colours(bench, field, bench.path, middle);
    return point;
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

// Where the rays land in the plane of the focus: their weighted middle and root-mean-square distance from it.
struct Landing {
    glm::dvec2 middle{0};
    Millimetres rms{0};
};
Landing landing_of(std::span<const WeightedWavefront> colours, const Point& focus) {
    glm::dvec2 sum{0};
    double square = 0;
    double weights = 0;
    for (const auto& [wavefront, weight] : colours) {
        for (const WavefrontRay& ray : wavefront->rays) {
            const glm::dvec2 at = landing(ray, focus);
            sum += weight * at;
            square += weight * glm::dot(at, at);
        }
        weights += weight * static_cast<double>(wavefront->rays.size());
    }
    const glm::dvec2 middle = sum / weights;
    return {middle, {std::sqrt(std::max(0.0, square / weights - glm::dot(middle, middle)))}};
}

void find_spots(PointImage& image,
                const Colours& colours,
                std::span<const WeightedWavefront> white,
                const Point& focus) {
    const Landing landed = landing_of(white, focus);
    image.spot_rms = landed.rms;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        for (const WavefrontRay& ray : colours[w].rays)
            image.spots[w].push_back(landing(ray, focus) - landed.middle);
    }
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
    image.colour_seen = to_arcminutes(Radians{image.lateral_colour() / bench.eyepiece});
}

constexpr int spread_cells = 29;
constexpr double cell_in_airy_units =
    0.28;  // of wavelength times f-number: the grid reaches four of them

void find_spread(PointImage& image,
                 const EyeImage& eye,
                 std::span<const WeightedWavefront> colours,
                 const Point& focus) {
    const Millimetres unit = eye.airy_radius / airy_waves;
    image.spread = point_spread(colours, focus, eye.working_focal_ratio, spread_cells,
                                cell_in_airy_units * unit);
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

Millimetres depth_for(const EyeImage& eye, const Bench& bench) {
    return depth_of_focus(bench.eyepiece / eye.pupil);
}

// On the retina.
void find_seen(PointImage& image,
               const Bench& bench,
               const EyeImage& eye,
               const Colours& entering) {
    const WhiteLight light = WhiteLight(entering).through_eye(bench.eyepiece);
    const auto colours = light.weighted();
    const auto [focus, peak] = sharpest(colours, depth_for(eye, bench));
    image.seen_peak = peak;
    image.seen_focus = {focus.z};
    const Landing landed = landing_of(colours, focus);
    image.blur = to_arcminutes(Radians{2 * landed.rms / bench.eyepiece});
}

Bench bench_of(const Setup& setup, const Train& train, Eye eye, ImageEffort effort) {
    const EyePath& path = train.path(eye);
    return {.train = train,
            .path = path,
            .open = without_stops(path),
            .corrections = glass_corrections(setup, path),
            .coma = coma_corrections(setup, path),
            .pupil = sunflower(effort.rays),
            .eyepiece = part_as<EyepiecePair>(setup, train.choice.eyepiece).focal_length,
            .eye_pupil = part_as<Observer>(setup, train.choice.observer).eye_pupil,
            .with_spread = effort.with_spread};
}

PointImage image_at(const Bench& bench,
                    const EyeImage& eye,
                    const TracedPoint& traced,
                    FieldSlope field,
                    glm::dvec2 at) {
    PointImage image;
    image.at = at;
    image.is_formed = is_formed(traced.arriving) && is_formed(traced.entering);
    if (!image.is_formed) return image;
    const std::array green{WeightedWavefront{&traced.arriving[primary_wavelength]}};
    const Point sphere = best_sphere_centre(green);
    image.green_peak = sharpest(green, eye.depth_of_focus).peak;
    image.rms_waves = rms_waves(*green.front().wavefront, sphere);
    image.aberrations = aberrations(*green.front().wavefront, sphere);
    const WhiteLight light(traced.arriving);
    const auto white = light.weighted();
    const auto [focus, white_peak] = sharpest(white, eye.depth_of_focus);
    image.focus = {focus.z};
    image.white_peak = white_peak;
    find_spots(image, traced.arriving, white, focus);
    find_lateral_colour(image, bench, field, focus);
    // Circles of light are broad: every second line tells them.
    if (bench.with_spread) find_spread(image, eye, light.weighted(2), focus);
    find_seen(image, bench, eye, traced.entering);
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
    eye.working_focal_ratio = focal_ratio_of(edge[primary_wavelength]);
    eye.airy_radius = airy_radius(eye.working_focal_ratio);
    eye.depth_of_focus = depth_of_focus(eye.working_focal_ratio);
    eye.pupil = std::min(bench.eyepiece / eye.working_focal_ratio, bench.eye_pupil);
    const Millimetres green = ring_focus(middle[primary_wavelength]);
    eye.spherical = ring_focus(edge[primary_wavelength]) - green;
    eye.blue_shift = ring_focus(middle.front()) - green;
    eye.red_shift = ring_focus(middle.back()) - green;
    eye.perfect_resolution =
        to_arcseconds(airy_angle(Millimetres{2 * bench.train.objective_radius}));
    return eye;
}

// A star on the retina at the telescope without head and glass through that eyepiece: the objective's colour in the cone that
// arrives, where lengths along the beam go with the square of the f-number.
Sharpest
bare_image(const Bench& bench, const EyeImage& eye, const Colours& entering, Millimetres eyepiece) {
    const double own = bench.train.objective_focal_length / (2 * bench.train.objective_radius);
    const double slower = eye.working_focal_ratio / own;
    PerWavelength focus = colour_of_objective(bench.path);
    for (double& one : focus)
        one *= slower * slower;
    const WhiteLight light = WhiteLight(perfect(entering, focus)).through_eye(eyepiece);
    return sharpest(light.weighted(), depth_for(eye, bench));
}

// Tries shorter eyepieces until less is kept than should be.
std::optional<double> shows_from(const Bench& bench, const EyeImage& eye, const Colours& arriving) {
    for (double pupil = wide_pupil.value; pupil > 0.4; pupil -= 0.25) {
        const Millimetres eyepiece{pupil * eye.working_focal_ratio};
        const WhiteLight light = WhiteLight(arriving).through_eye(eyepiece);
        const double peak = sharpest(light.weighted(), eye.depth_of_focus).peak;
        if (peak < kept_badly * bare_image(bench, eye, arriving, eyepiece).peak)
            return bench.eyepiece / eyepiece;
    }
    return std::nullopt;
}

void judge_axis(EyeImage& eye, const Bench& bench) {
    const TracedPoint axis = trace_point(bench, eye, {0, 0});
    if (is_formed(axis.entering)) {
        const Sharpest bare = bare_image(bench, eye, axis.entering, bench.eyepiece);
        eye.bare_peak = bare.peak;
        eye.bare_focus = {bare.at.z};
    }
    eye.axis = image_at(bench, eye, axis, {0, 0}, {0, 0});
    if (eye.axis.is_formed && sharpness_of(eye, eye.axis) == Sharpness::hidden)
        eye.shows_from = shows_from(bench, eye, axis.arriving);
}

}  // namespace

std::optional<double> EyeImage::widening(const PointImage& image) const {
    // Of the Airy pattern half lies within 0.5348 wavelength N: 1 - J0^2 - J1^2 = 1/2 (Lord Rayleigh, 1881,
    // from memory; the root by mpmath).
    if (!image.half_energy_radius) return std::nullopt;
    return *image.half_energy_radius / (airy_radius / airy_waves * 0.53483);
}

Sharpness sharpness_of(const EyeImage& eye, const PointImage& image) {
    const double kept = eye.kept(image);
    if (kept >= kept_well || image.blur < seen_at_all) return Sharpness::good;
    if (kept >= kept_badly) return Sharpness::fair;
    return eye.pupil < wide_pupil ? Sharpness::soft : Sharpness::hidden;
}

ImageFault main_fault(const EyeImage& eye, const PointImage& image) {
    constexpr double nothing_lost = 0.98;
    const double kept = eye.kept(image);
    if (!image.is_formed || kept > nothing_lost) return ImageFault::nothing;
    if (image.green_peak - kept > 1 - image.green_peak) return ImageFault::colour;
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
    judge_axis(result, bench);
    const FieldMap map = field_map(train, eye);
    const double radius = inner_radius(path.surfaces.back().aperture);
    constexpr double same_error = 1e-6;  // waves: places that differ by less are alike
    double worst = -1;
    glm::dvec2 place{1, 0};
    for (const glm::dvec2& at : rim(4)) {
        const double error = rough_error(bench, map.slope_at(at * radius));
        if (error <= worst + same_error) continue;
        worst = error;
        place = at;
    }
    const FieldSlope slope = map.slope_at(place * radius);
    result.edge = image_at(bench, result, trace_point(bench, result, slope), slope, place);
    return result;
}

std::optional<double>
white_peak_on_axis(const Setup& setup, const Train& train, Eye eye, ImageEffort effort) {
    const Bench bench = bench_of(setup, train, eye, effort);
    const Colours colours = trace_colours(bench, {0, 0}, bench.path, bench.pupil);
    if (!is_formed(colours)) return std::nullopt;
    const WhiteLight light(colours);
    return sharpest(light.weighted(), beam_of(bench).depth_of_focus).peak;
}

}  // namespace beamfork
