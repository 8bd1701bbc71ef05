// How one point of light looks in a picture: the diffraction of a round aperture, laid over every traced ray
// of its spread.
#pragma once

#include <span>
#include <vector>

#include <glm/glm.hpp>

namespace beamfork {

/// Light of the diffraction pattern, 1 in the middle, at x = pi D sin(angle) / wavelength, for an aperture D
/// with a round obstruction of that share of its diameter: [2 J1(x)/x - e^2 2 J1(ex)/(ex)]^2 / (1 - e^2)^2
/// (M. Born & E. Wolf, Principles of Optics, 7th ed., sec. 8.5.2 and 8.6.2).
double diffraction_light(double x, double obstruction);

/// First zero of J1, where the first dark ring lies without an obstruction (Born & Wolf, sec. 8.5.2).
constexpr double first_dark_x = 3.831706;

/// Shares of light by pixel, in rows from the top; they sum to 1 unless some lie beyond the limit.
struct BlurKernel {
    int reach = 0;  ///< (2 reach + 1) squared pixels, the point itself in the middle
    std::vector<float> share{1};
    [[nodiscard]] int side() const { return 2 * reach + 1; }
};

struct BlurSource {
    std::span<const glm::dvec2> spots;  ///< pixels, x right, y up; empty: one in the middle
    double dark_ring = 0;               ///< radius of the first dark ring, pixels
    double obstruction = 0;
    int limit = 256;  ///< pixels beyond which light is out of the picture and is dropped
};

/// How far that kernel reaches, pixels: the farthest ray with its share of the gaps between rays, and four
/// dark rings.
int reach_of(const BlurSource& source);
BlurKernel blur_kernel(const BlurSource& source);

}  // namespace beamfork
