// The wavefront that arrives near an eye's field stop, as the optical path of every ray that got through, and what
// follows from it: best focus, root-mean-square error and the height of the peak against a perfect image.
//
// Places and paths of rays are bare mm, in the field stop's frame. The path to an image point is measured to the plane through it square to
// the ray, which is a reference sphere of endless radius: a sphere of radius R would differ by a ray's sideways error
// squared over 2R (1 % of the wavefront for 145 mm of glass at f/5 and R = 50 mm). In this form the path is linear in
// the image point, so that the best-fit sphere is a linear least-squares fit.
#pragma once

#include <span>
#include <vector>

#include "trace/sampling.hpp"

namespace beamfork {

struct WavefrontRay {
    glm::dvec2 pupil{0};  ///< where it met the objective, in units of its radius
    Point at{0.0};
    Direction along{0, 0, 1};
    double path = 0;  ///< optical path to `at`, mm
};

struct Wavefront {
    Micrometres wavelength{0};
    std::size_t sent = 0;  ///< rays that were sent through the objective
    std::vector<WavefrontRay> rays;
    [[nodiscard]] double share() const {
        return sent == 0 ? 0 : static_cast<double>(rays.size()) / static_cast<double>(sent);
    }
};

/// The rays from one field point that reach the end of that path.
Wavefront trace_wavefront(const Train& train,
                          const EyePath& path,
                          FieldSlope field,
                          std::span<const glm::dvec2> pupil,
                          std::size_t wavelength);

/// Optical path of a ray to an image point, mm.
inline double path_to(const WavefrontRay& ray, const Point& focus) {
    return ray.path + glm::dot(focus - ray.at, ray.along);
}

/// Mean of the rays' directions.
Direction mean_direction(const Wavefront& wavefront);

/// One colour of an image with the eye's weight for it.
struct WeightedWavefront {
    const Wavefront* wavefront = nullptr;
    double weight = 1;
};

/// Fewer rays than this make no image worth judging.
constexpr std::size_t fewest_rays = 12;

/// The image point about which all colours together deviate least (weighted squares of waves, each colour with a
/// piston of its own): the centre of the best-fit reference sphere. Every wavefront needs `fewest_rays`.
Point best_sphere_centre(std::span<const WeightedWavefront> colours);

/// Root-mean-square deviation from the sphere about that point, in waves.
double rms_waves(const Wavefront& wavefront, const Point& focus);

/// Height of the peak at that point over the perfect one's through the same openings, 0..1: the squared mean of the
/// complex amplitudes, weighted over the colours (K. Strehl's ratio by the diffraction integral, not by its exponential
/// approximation).
double strehl(std::span<const WeightedWavefront> colours, const Point& focus);

struct Sharpest {
    Point at{0.0};
    double peak = 0;  ///< `strehl` there
};
/// Where the eye would focus: the highest peak along the beam through the centre of all colours' best sphere, looked
/// for from the nearest to the farthest focus of the heavier colours and beyond, to 1/32 of `depth` (of focus).
Sharpest sharpest(std::span<const WeightedWavefront> colours, Millimetres depth);
inline Point sharpest_focus(std::span<const WeightedWavefront> colours, Millimetres depth) {
    return sharpest(colours, depth).at;
}

/// f-number of the cone that arrives, from how the rays' directions spread with their place on the objective.
double focal_ratio_of(const Wavefront& wavefront);

}  // namespace beamfork
