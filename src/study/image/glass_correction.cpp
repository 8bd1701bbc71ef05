#include "study/image/glass_correction.hpp"

#include <algorithm>
#include <cmath>

#include "parts/shifter.hpp"

namespace beamfork {

namespace {

// Magnification of a thin lens at its place in the path.
double factor_of(const PlacedSurface& lens) {
    return 1 / (1 + lens.object_distance / lens.focal_length[primary_wavelength]);
}

double quartic_of(const GlassCorrection& one) {
    const double n = one.index[primary_wavelength];
    const double s = one.rim_sine;
    const double t = one.glass.value;
    if (s <= 0) return t * (n * n - 1) / (8 * n * n * n);
    const double error = t * (std::sqrt(n * n - s * s) - n) + t / n * (1 - std::sqrt(1 - s * s));
    return error / (s * s * s * s);
}

}  // namespace

std::vector<GlassCorrection> glass_corrections(const Setup& setup, const EyePath& path) {
    std::vector<GlassCorrection> found;
    for (auto lens = path.surfaces.begin(); lens != path.surfaces.end(); ++lens) {
        if (lens->kind != SurfaceKind::thin_lens) continue;
        const auto* shifter = setup.parts.at(lens->part).body.as<Shifter>();
        if (shifter == nullptr || shifter->corrected_glass.value_or(Millimetres{0}).value <= 0)
            continue;
        const auto face = std::find_if(lens, path.surfaces.end(), [](const PlacedSurface& s) {
            return s.kind == SurfaceKind::refraction && s.index_after[primary_wavelength] > 1;
        });
        if (face == path.surfaces.end()) continue;
        GlassCorrection one{*shifter->corrected_glass, face->index_after, 0, 1};
        if (shifter->corrected_focal_ratio)
            one.rim_sine = 1 / (2 * *shifter->corrected_focal_ratio);
        for (auto later = lens + 1; later != path.surfaces.end(); ++later) {
            if (later->kind == SurfaceKind::thin_lens) one.later_factor *= factor_of(*later);
        }
        found.push_back(one);
    }
    return found;
}

void correct(Wavefront& wavefront,
             const std::vector<GlassCorrection>& corrections,
             std::size_t wavelength,
             const Direction& chief) {
    for (const GlassCorrection& one : corrections) {
        const double m2 = one.later_factor * one.later_factor;
        const double quartic = quartic_of(one) * m2 * m2;
        const double square = one.glass.value / 2
                              * (1 / one.index[primary_wavelength] - 1 / one.index[wavelength])
                              * m2;
        for (WavefrontRay& ray : wavefront.rays) {
            const glm::dvec2 sine = glm::dvec2(ray.along) - glm::dvec2(chief);
            const double s2 = glm::dot(sine, sine);
            const double taken = (quartic * s2 + square) * s2;
            // A ray stands square to its wavefront: it moves by the gradient in direction cosines.
            const Direction moved{(4 * quartic * s2 + 2 * square) * sine, 0};
            ray.at += moved;
            ray.path += glm::dot(moved, ray.along) - taken;
        }
    }
}

}  // namespace beamfork
