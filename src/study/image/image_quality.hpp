// Image quality: what all that glass in a converging beam does to a star, for each eye, on axis and at the edge of its
// field: wavefront, peak height, colour, spot and spread of the light, at the focus that the eye itself would choose.
//
// From the traced rays of the whole train. The refractor's objective is ideal unless it is given a colour error, so
// that with it these are the faults of the glass path; the eyepiece, the eye and spectacles are not modelled. White
// light is the lines F, e and C weighted by the eye's response at each (eye_response.hpp): three lines, so peak
// heights in white light are good to a few per cent.
#pragma once

#include <optional>

#include "study/image/aberrations.hpp"
#include "study/image/eye_response.hpp"
#include "study/image/point_spread.hpp"

namespace beamfork {

struct ImageEffort {
    int rays = 96;            ///< per field point and wavelength
    bool with_spread = true;  ///< else PointImage's spread and what is measured on it stay empty
    bool operator==(const ImageEffort&) const = default;
};

/// One place of the field as an eye sees it. Waves are those of the e line.
struct PointImage {
    glm::dvec2 at{0};          ///< on the field stop, in units of its radius (+x right, +y up)
    bool is_formed = false;    ///< false: too few rays arrive for an image; the rest is empty
    double rms_waves = 0;      ///< green wavefront against its own best-fit sphere
    double green_peak = 0;     ///< of the perfect peak at the best focus for green light, 0..1
    double day_peak = 0;       ///< in white light by day, at the best focus for it
    double night_peak = 0;     ///< likewise for the dark-adapted eye
    Millimetres focus{0};      ///< best focus by day, behind the field stop
    Aberrations aberrations;   ///< green
    Millimetres spot_rms{0};   ///< radius about its middle, all colours by day's weight
    glm::dvec2 blue_shift{0};  ///< blue chief ray against the green one, mm
    glm::dvec2 red_shift{0};
    std::array<std::vector<glm::dvec2>, wavelength_count> spots;  ///< from the middle, mm
    PointSpread spread;         ///< of white light by day, relative to its perfect peak
    double energy_in_disc = 0;  ///< light within the Airy disc's radius (a perfect image: 0.838)
    std::optional<Millimetres> half_energy_radius;  ///< nothing: beyond the grid

    /// Blue against red.
    [[nodiscard]] Millimetres lateral_colour() const {
        return {glm::length(blue_shift - red_shift)};
    }
};

struct EyeImage {
    Eye eye = Eye::left;
    double focal_ratio = 0;  ///< of the cone that arrives
    Millimetres airy_radius{0};
    Millimetres depth_of_focus{0};  ///< one way
    Millimetres spherical{0};       ///< focus of the rim less that of the middle rays, green
    Millimetres blue_shift{0};      ///< focus of blue less that of green near the axis
    Millimetres red_shift{0};
    Arcseconds perfect_resolution{0};
    bool is_corrected = false;  ///< a shifter made for glass takes part of the error away
    PointImage axis;
    PointImage edge;  ///< where green light is worst of four places: right, up, left, down

    /// Blue against red.
    [[nodiscard]] Millimetres axial_colour() const { return blue_shift - red_shift; }
    /// How much wider than the perfect image's is the circle that holds half of the light; nothing: very much.
    [[nodiscard]] std::optional<double> widening(const PointImage& image) const;
};

/// What takes most of the peak away.
enum class ImageFault { nothing, colour, spherical, coma, astigmatism, other };
ImageFault main_fault(const PointImage& image);

/// The train with the drawtube as it stands; a focus out of reach is judged where it falls.
EyeImage image_quality(const Setup& setup, const Train& train, Eye eye, ImageEffort effort = {});

/// PointImage::day_peak on axis alone, at a tenth of the cost: enough to compare setups. Nothing when no image is
/// formed.
std::optional<double>
day_peak_on_axis(const Setup& setup, const Train& train, Eye eye, ImageEffort effort = {});

}  // namespace beamfork
