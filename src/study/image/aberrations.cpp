#include "study/image/aberrations.hpp"

#include <array>
#include <cmath>

namespace beamfork {

namespace {

constexpr std::size_t term_count = 10;
using Terms = std::array<double, term_count>;

// Piston, tilts, defocus, astigmatism, coma, spherical of fourth and of sixth order; each 1 at the rim
// (R. J. Noll, J. Opt. Soc. Am. 66, 207, 1976, without his normalisation).
Terms zernike_terms(glm::dvec2 p) {
    const double r2 = glm::dot(p, p);
    return {1,
            p.x,
            p.y,
            2 * r2 - 1,
            p.x * p.x - p.y * p.y,
            2 * p.x * p.y,
            (3 * r2 - 2) * p.x,
            (3 * r2 - 2) * p.y,
            (6 * r2 - 6) * r2 + 1,
            ((20 * r2 - 30) * r2 + 12) * r2 - 1};
}

struct NormalEquations {
    std::array<Terms, term_count> square{};
    Terms right{};

    // Cholesky's decomposition in place; a hair on the diagonal keeps a pupil of few rays solvable.
    [[nodiscard]] Terms solved() const {
        auto low = square;
        Terms x = right;
        for (std::size_t i = 0; i < term_count; ++i) {
            for (std::size_t j = 0; j <= i; ++j) {
                double sum = square[i][j] + (i == j ? 1e-12 * square[0][0] : 0);
                for (std::size_t k = 0; k < j; ++k)
                    sum -= low[i][k] * low[j][k];
                low[i][j] = i == j ? std::sqrt(std::max(sum, 1e-300)) : sum / low[j][j];
            }
        }
        for (std::size_t i = 0; i < term_count; ++i) {
            for (std::size_t k = 0; k < i; ++k)
                x[i] -= low[i][k] * x[k];
            x[i] /= low[i][i];
        }
        for (std::size_t i = term_count; i-- > 0;) {
            for (std::size_t k = i + 1; k < term_count; ++k)
                x[i] -= low[k][i] * x[k];
            x[i] /= low[i][i];
        }
        return x;
    }
};

}  // namespace

Aberrations aberrations(const Wavefront& wavefront, const Point& focus) {
    if (wavefront.rays.size() < 2 * term_count) return {};
    NormalEquations equations;
    const double piston = path_to(wavefront.rays.front(), focus);
    const double wavelength = to_millimetres(wavefront.wavelength).value;
    for (const WavefrontRay& ray : wavefront.rays) {
        const Terms terms = zernike_terms(ray.pupil);
        const double waves = (path_to(ray, focus) - piston) / wavelength;
        for (std::size_t i = 0; i < term_count; ++i) {
            equations.right[i] += terms[i] * waves;
            for (std::size_t j = 0; j <= i; ++j)
                equations.square[i][j] += terms[i] * terms[j];
        }
    }
    const Terms fit = equations.solved();
    Aberrations found;
    found.spherical = 6 * fit[8] - 30 * fit[9];
    found.coma = 3 * std::hypot(fit[6], fit[7]);
    found.astigmatism = 2 * std::hypot(fit[4], fit[5]);
    // Mean squares of the terms over the disc: 1/5 and 1/7, 1/8, 1/6.
    found.spherical_rms = std::sqrt(fit[8] * fit[8] / 5 + fit[9] * fit[9] / 7);
    found.coma_rms = std::hypot(fit[6], fit[7]) / std::sqrt(8.0);
    found.astigmatism_rms = std::hypot(fit[4], fit[5]) / std::sqrt(6.0);
    return found;
}

}  // namespace beamfork
