#include "study/image/coma_correction.hpp"

#include <algorithm>
#include <cmath>

#include "parts/coma_corrector.hpp"
#include "study/focus/focus_budget.hpp"

namespace beamfork {

Millimetres ComaCorrection::beyond() const {
    const double off = (spacing - wanted).value;
    return {std::copysign(std::max(0.0, std::abs(off) - window.value), off)};
}

double ComaCorrection::share() const {
    return std::max(0.0, 1 - 3 * std::abs(beyond().value) / lens_to_image.value);
}

std::vector<ComaCorrection> coma_corrections(const Setup& setup, const EyePath& path) {
    std::vector<ComaCorrection> found;
    std::vector<ShifterAtWork> lenses;
    needed_back_focus(path, {path.wanted_image}, &lenses);
    double earlier = 1;
    for (const ShifterAtWork& lens : lenses) {
        const auto* corrector = setup.parts.at(lens.part).body.as<ComaCorrector>();
        if (corrector != nullptr) {
            found.push_back({lens.part, corrector->spacing, corrector->window,
                             lens.image_distance - corrector->lens_to_shoulder(),
                             corrector->lens_to_image(), earlier});
        }
        earlier *= lens.factor;
    }
    return found;
}

namespace {

// How the rays' sideways direction cosines follow from their place in the pupil, by least squares.
std::optional<glm::dmat2> directions_by_place(const Wavefront& wavefront, const Direction& chief) {
    glm::dmat2 turned{0.0};
    glm::dmat2 spread{0.0};
    for (const WavefrontRay& ray : wavefront.rays) {
        turned += glm::outerProduct(glm::dvec2(ray.along - chief), ray.pupil);
        spread += glm::outerProduct(ray.pupil, ray.pupil);
    }
    if (glm::determinant(spread) < 1e-12) return std::nullopt;
    const glm::dmat2 map = turned * glm::inverse(spread);
    if (glm::determinant(map) == 0) return std::nullopt;
    return map;
}

}  // namespace

void take_coma(Wavefront& wavefront,
               const std::vector<ComaCorrection>& corrections,
               const Train& train,
               FieldSlope field,
               const Direction& chief) {
    double share = 0;
    for (const ComaCorrection& one : corrections)
        share += one.share() / (one.earlier_factor * one.earlier_factor);
    if (share == 0 || field == FieldSlope{0}) return;
    const auto map = directions_by_place(wavefront, chief);
    if (!map) return;
    const glm::dmat2 from_pupil = glm::inverse(glm::transpose(*map));
    const double a = train.objective_radius;
    const double f = train.objective_focal_length;
    const glm::dvec2 coma = share * a * a * a / (4 * f * f) * field;
    for (WavefrontRay& ray : wavefront.rays) {
        const double p2 = glm::dot(ray.pupil, ray.pupil);
        const double along_field = glm::dot(ray.pupil, coma);
        // A ray stands square to its wavefront: it moves by the gradient in direction cosines.
        const glm::dvec2 moved = from_pupil * (p2 * coma + 2 * along_field * ray.pupil);
        ray.at += Direction{moved, 0};
        ray.path += glm::dot(moved, glm::dvec2(ray.along)) - along_field * p2;
    }
}

}  // namespace beamfork
