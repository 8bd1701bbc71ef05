#include "scene/sight_view/sight_view_subject.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace beamfork {

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr std::array<std::string_view, 6> names{"moon",      "stars",  "planet",
                                                "moon-edge", "double", "board"};

constexpr double whole_sphere = 41252.96;  // square degrees
const double log_at_six = std::log10(4800 / whole_sphere);
const double log_slope = std::log10(2.5e6 / 4800) / 5.5;  // per magnitude

// 0..1 of a place and a seed, without any table: SplitMix64 (S. Vigna's public-domain mixing constants).
double noise(std::int64_t x, std::int64_t y, std::uint64_t seed) {
    std::uint64_t z = static_cast<std::uint64_t>(x) * 0x9E3779B97F4A7C15U
                      + static_cast<std::uint64_t>(y) * 0xC2B2AE3D27D4EB4FU + seed;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1p-53;
}

double uniform(std::mt19937_64& random) { return static_cast<double>(random() >> 11U) * 0x1p-53; }

// From warm to cold white; shares with mean 1.
glm::vec3 star_colour(double warmth) {
    const auto t = static_cast<float>(warmth);
    const glm::vec3 colour =
        glm::mix(glm::vec3{0.8F, 0.95F, 1.25F}, glm::vec3{1.25F, 0.95F, 0.7F}, t);
    return colour * (3 / (colour.r + colour.g + colour.b));
}

glm::vec3 planet_light(const SightScene& scene, glm::dvec2 sky) {
    const glm::dvec2 at = sky / (scene.planet_arcsec / 2 * arcsecond);
    const double r2 = glm::dot(at, at);
    if (r2 >= 1) return glm::vec3{0};
    const double mu = std::sqrt(1 - r2);
    double band = 0;
    for (int wave = 1; wave <= 5; ++wave) {
        const double phase = 2 * std::numbers::pi * noise(wave, 0, scene.seed);
        band += std::sin(at.y * wave * 3.1 + phase) / (1 + 0.4 * wave);
    }
    const auto dark = static_cast<float>(0.5 + 0.5 * std::tanh(1.6 * band));
    const glm::vec3 zone{0.98F, 0.93F, 0.82F};
    const glm::vec3 belt{0.66F, 0.5F, 0.38F};
    return glm::mix(zone, belt, dark) * static_cast<float>(0.35 + 0.65 * mu);  // darker to the limb
}

// Slope of the ground towards the light where one crater with a raised rim is met, its radius the unit.
double crater_slope(glm::dvec2 off) {
    const double r = glm::length(off);
    if (r > 1.6 || r < 1e-9) return 0;
    const double bowl = r < 1 ? 2 * r : -3 * (1.6 - r) / 0.6 * (r - 1) / 0.6;
    return bowl * off.x / r;
}

glm::vec3 moon_light(const SightScene& scene, glm::dvec2 sky, glm::dvec2 centre) {
    const glm::dvec2 at = (sky - centre) / moon_radius;
    const double r2 = glm::dot(at, at);
    if (r2 >= 1) return glm::vec3{0};
    const double mu = std::sqrt(1 - r2);
    const glm::dvec2 ground{std::asin(std::clamp(at.x, -1.0, 1.0)), at.y / std::max(0.2, mu)};
    double slope = 0;
    double cell = 0.22;
    for (int octave = 0; octave < 5; ++octave, cell *= 0.5) {
        const auto x0 = static_cast<std::int64_t>(std::floor(ground.x / cell));
        const auto y0 = static_cast<std::int64_t>(std::floor(ground.y / cell));
        for (std::int64_t x = x0 - 1; x <= x0 + 1; ++x) {
            for (std::int64_t y = y0 - 1; y <= y0 + 1; ++y) {
                const std::uint64_t seed =
                    scene.seed * 1000003U + static_cast<std::uint64_t>(octave);
                if (noise(x, y, seed) > 0.55) continue;
                const glm::dvec2 middle =
                    cell
                    * glm::dvec2{static_cast<double>(x) + noise(x, y, seed + 11),
                                 static_cast<double>(y) + noise(x, y, seed + 22)};
                const double radius = cell * (0.2 + 0.35 * noise(x, y, seed + 33));
                slope += 0.5 * crater_slope((ground - middle) / radius);
            }
        }
    }
    const double plain =
        0.55 + 0.25 * std::sin(3 * ground.x + 1) * std::sin(4 * ground.y + scene.seed);
    // The Sun stands at the right, 50 degrees from our sight; its light on dust falls off as Lommel and Seeliger have it
    // (from memory): by its height over that plus ours.
    const double sun = std::max(0.0, 0.77 * at.x + 0.64 * mu);
    const double light = plain * std::clamp(2 * sun / (sun + mu) * (1 + slope), 0.0, 1.3);
    return glm::vec3{1, 0.985F, 0.95F} * static_cast<float>(std::min(1.0, light));
}

// Digits of 3 x 5 cells, a row of three bits each from the top.
constexpr std::array<std::array<int, 5>, 10> digits{{{7, 5, 5, 5, 7},
                                                     {2, 6, 2, 2, 7},
                                                     {7, 1, 7, 4, 7},
                                                     {7, 1, 3, 1, 7},
                                                     {5, 5, 7, 1, 1},
                                                     {7, 4, 7, 1, 7},
                                                     {7, 4, 7, 5, 7},
                                                     {7, 1, 1, 2, 2},
                                                     {7, 5, 7, 5, 7},
                                                     {7, 5, 7, 1, 7}}};

bool digit_is_inked(int digit, double x, double y) {  // x 0..3 from the left, y 0..5 from the top
    if (x < 0 || x >= 3 || y < 0 || y >= 5) return false;
    return (digits[static_cast<std::size_t>(digit)][static_cast<std::size_t>(y)]
            >> (2 - static_cast<int>(x)))
           & 1;
}

// A number printed about the middle at (0, 0), its height 5 cells.
bool number_is_inked(int number, double x, double y) {
    const bool two = number >= 10;
    const double left = two ? -3.5 : -1.5;
    if (two && digit_is_inked(number / 10 % 10, x - left, 2.5 - y)) return true;
    return digit_is_inked(number % 10, x - left - (two ? 4 : 0), 2.5 - y);
}

// Upright is told by the numbers, mirrored by them and by the triangle at the upper right.
glm::vec3 board_light(glm::dvec2 sky, double tick) {
    const glm::vec3 paper{0.93F, 0.92F, 0.88F};
    const glm::vec3 ink{0.04F, 0.04F, 0.06F};
    const glm::dvec2 at = sky / tick;
    if (at.x > 3 && at.y > 3 && at.x + at.y < 9) return {0.8F, 0.25F, 0.1F};
    for (const bool upright : {false, true}) {
        const double along = upright ? at.y : at.x;
        const double across = upright ? at.x : at.y;
        const double nearest = std::round(along);
        const bool is_fifth = std::abs(std::remainder(nearest, 5.0)) < 0.25;
        if (std::abs(across) < 0.05) return ink;
        if (std::abs(along - nearest) < (is_fifth ? 0.08 : 0.05)
            && std::abs(across) < (is_fifth ? 0.8 : 0.4)) {
            return ink;
        }
        if (!is_fifth || nearest == 0) continue;
        const glm::dvec2 place = upright ? glm::dvec2{1.7, nearest} : glm::dvec2{nearest, -1.7};
        const glm::dvec2 cell = (at - place) * 4.0;
        if (number_is_inked(static_cast<int>(std::abs(nearest)), cell.x, cell.y)) return ink;
    }
    return paper;
}

}  // namespace

std::string_view name_of(SightSubject subject) { return names[static_cast<std::size_t>(subject)]; }

std::optional<SightSubject> sight_subject_named(std::string_view name) {
    for (const SightSubject subject : all_sight_subjects) {
        if (name_of(subject) == name) return subject;
    }
    return std::nullopt;
}

double stars_per_square_degree(double magnitude) {
    return std::pow(10, log_at_six + log_slope * (magnitude - 6));
}

std::vector<SkyStar> stars_of(const SightScene& scene, double radius, double faintest) {
    if (scene.subject == SightSubject::double_star) {
        const double half = scene.separation_arcsec / 2 * arcsecond;
        return {{{-half, 0}, 5, glm::vec3{1}},
                {{half, 0}, 5 + scene.magnitude_difference, glm::vec3{1}}};
    }
    if (scene.subject != SightSubject::stars) return {};
    const double area = std::numbers::pi * radius * radius / (degree * degree);
    const double count = std::min(4000.0, std::round(area * stars_per_square_degree(faintest)));
    std::mt19937_64 random(scene.seed);
    std::vector<SkyStar> stars;
    for (int i = 0; i < static_cast<int>(count); ++i) {
        const double out = radius * std::sqrt(uniform(random));
        const double turn = 2 * std::numbers::pi * uniform(random);
        const double share = std::max(1e-6, uniform(random));
        stars.push_back({{out * std::cos(turn), out * std::sin(turn)},
                         faintest + std::log10(share) / log_slope,
                         star_colour(uniform(random))});
    }
    return stars;
}

glm::vec3 sky_light(const SightScene& scene, glm::dvec2 sky, double tick) {
    switch (scene.subject) {
    case SightSubject::stars:
    case SightSubject::double_star: return glm::vec3{0};
    case SightSubject::planet: return planet_light(scene, sky);
    case SightSubject::moon: return moon_light(scene, sky, {0, 0});
    case SightSubject::lunar_edge:  // the limb passes at the right of the middle
        return moon_light(scene, sky, {-0.72 * moon_radius, 0});
    case SightSubject::daytime: return board_light(sky, tick);
    }
    return glm::vec3{0};
}

double board_tick(double field_radius) {
    const double wanted = field_radius / 10 / arcsecond;
    const double decade = std::pow(10, std::floor(std::log10(wanted)));
    const double leading = wanted / decade;
    return (leading < 1.5 ? 1 : leading < 3.5 ? 2 : leading < 7.5 ? 5 : 10) * decade * arcsecond;
}

}  // namespace beamfork
