#include "study/image/aberrations.hpp"

#include <cmath>

#include <Eigen/Cholesky>

namespace beamfork {

namespace {

constexpr int term_count = 10;
using Terms = Eigen::Vector<double, term_count>;

// Piston, tilts, defocus, astigmatism, coma, spherical of fourth and of sixth order; each 1 at the rim
// (R. J. Noll, J. Opt. Soc. Am. 66, 207, 1976, without his normalisation).
Terms zernike_terms(glm::dvec2 p) {
    const double r2 = glm::dot(p, p);
    return Terms{{1, p.x, p.y, 2 * r2 - 1, p.x * p.x - p.y * p.y, 2 * p.x * p.y, (3 * r2 - 2) * p.x,
                  (3 * r2 - 2) * p.y, (6 * r2 - 6) * r2 + 1, ((20 * r2 - 30) * r2 + 12) * r2 - 1}};
}

}  // namespace

Aberrations aberrations(const Wavefront& wavefront, const Point& focus) {
    if (wavefront.rays.size() < std::size_t{2} * term_count) return {};
    Eigen::Matrix<double, term_count, term_count> square;
    square.setZero();
    Terms right = Terms::Zero();
    const double piston = path_to(wavefront.rays.front(), focus);
    const double wavelength = to_millimetres(wavefront.wavelength).value;
    for (const WavefrontRay& ray : wavefront.rays) {
        const Terms terms = zernike_terms(ray.pupil);
        const double waves = (path_to(ray, focus) - piston) / wavelength;
        right += waves * terms;
        square += terms * terms.transpose();
    }
    // A hair on the diagonal keeps a pupil of few rays solvable.
    square.diagonal().array() += 1e-12 * square(0, 0);
    const Terms fit = square.llt().solve(right);
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
