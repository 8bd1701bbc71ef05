#include "study/image/white_light.hpp"

#include <algorithm>

#include "glass/glass.hpp"
#include "parts/eyepiece_pair.hpp"

namespace beamfork {

namespace {

double index_of_common_glass(Micrometres wavelength) {
    static const Glass* const glass = standard_catalogue().known("N-BAK4");
    BEAMFORK_EXPECTS(glass != nullptr);
    return refractive_index(*glass, wavelength).value();
}

// Lagrange's polynomial through three nodes.
PerWavelength parabola_shares(const PerWavelength& nodes, double at) {
    PerWavelength shares{1, 1, 1};
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        for (std::size_t other = 0; other < wavelength_count; ++other) {
            if (other != w) shares[w] *= (at - nodes[other]) / (nodes[w] - nodes[other]);
        }
    }
    return shares;
}

}  // namespace

PerWavelength shares_of_traced(Micrometres wavelength) {
    PerWavelength nodes{};
    std::transform(traced_wavelengths.begin(), traced_wavelengths.end(), nodes.begin(),
                   index_of_common_glass);
    return parabola_shares(nodes, index_of_common_glass(wavelength));
}

const std::array<PerWavelength, white_lines.size()>& white_shares() {
    static const auto all = [] {
        std::array<PerWavelength, white_lines.size()> shares{};
        for (std::size_t i = 0; i < shares.size(); ++i)
            shares[i] = shares_of_traced(white_lines[i].wavelength);
        return shares;
    }();
    return all;
}

Millimetres eye_wants_behind_green(Micrometres wavelength, Millimetres eyepiece_focal_length) {
    const Dioptres beyond_green =
        eye_refraction(wavelength) - eye_refraction(traced_wavelengths[primary_wavelength]);
    return travel_per_dioptre(eyepiece_focal_length) * -beyond_green.value;
}

void keep_common_rays(Colours& traced) {
    // Each has some of the same places of the pupil, in the same order.
    const auto keep_those_of = [](Wavefront& wavefront, const Wavefront& other) {
        auto next = other.rays.begin();
        std::erase_if(wavefront.rays, [&](const WavefrontRay& ray) {
            const auto same = std::find_if(next, other.rays.end(), [&](const WavefrontRay& one) {
                return one.pupil == ray.pupil;
            });
            if (same == other.rays.end()) return true;
            next = same + 1;
            return false;
        });
    };
    for (Wavefront& wavefront : traced) {
        for (const Wavefront& other : traced) {
            if (other.rays.size() < other.sent) keep_those_of(wavefront, other);
        }
    }
}

WhiteLight::WhiteLight(const Colours& traced) : lines_(white_lines.size()) {
    const std::size_t count = traced.front().rays.size();
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        Wavefront& wavefront = lines_[line];
        wavefront.wavelength = white_lines[line].wavelength;
        wavefront.sent = traced.front().sent;
        wavefront.rays.resize(count);
        for (std::size_t i = 0; i < count; ++i) {
            WavefrontRay& ray = wavefront.rays[i];
            ray.pupil = traced.front().rays[i].pupil;
            ray.along = Direction{0};
            for (std::size_t w = 0; w < wavelength_count; ++w) {
                const double share = white_shares()[line][w];
                const WavefrontRay& one = traced[w].rays[i];
                ray.at += share * one.at;
                ray.along += share * one.along;
                ray.path += share * one.path;
            }
        }
    }
}

WhiteLight WhiteLight::through_eye(Millimetres eyepiece_focal_length) const {
    WhiteLight seen = *this;
    const Direction looked_along = glm::normalize(mean_direction(lines_.front()));
    for (Wavefront& wavefront : seen.lines_) {
        const double farther =
            eye_wants_behind_green(wavefront.wavelength, eyepiece_focal_length).value;
        for (WavefrontRay& ray : wavefront.rays)
            ray.at -= farther * looked_along;
    }
    return seen;
}

std::vector<WeightedWavefront> WhiteLight::weighted(std::size_t step) const {
    std::vector<WeightedWavefront> all;
    for (std::size_t line = 0; line < lines_.size(); line += step)
        all.push_back({&lines_[line], white_lines[line].y});
    return all;
}

PerWavelength colour_of_objective(const EyePath& path) {
    PerWavelength focus{};
    for (const PlacedSurface& surface : path.surfaces) {
        if (surface.kind != SurfaceKind::objective) continue;
        for (std::size_t w = 0; w < wavelength_count; ++w)
            focus[w] = surface.focal_length[w] - surface.focal_length[primary_wavelength];
    }
    return focus;
}

Colours perfect(const Colours& traced, const PerWavelength& focus) {
    Colours made = traced;
    for (std::size_t w = 0; w < wavelength_count; ++w) {
        made[w].rays = traced[primary_wavelength].rays;
        for (WavefrontRay& ray : made[w].rays) {
            ray.at = {0, 0, focus[w]};
            ray.path = 0;
        }
    }
    return made;
}

}  // namespace beamfork
