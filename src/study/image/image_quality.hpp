// Image quality: what all that glass in a converging beam does to a star, for each eye, on axis and at the edge of its
// field: wavefront, peak height, colour, spot and spread of the light, at the focus that the eye itself would choose;
// and how much of its sharpness this observer's eye misses at this magnification.
//
// From the traced rays of the whole train. The refractor's objective is ideal unless it is given a colour error, so
// that with it these are the faults of the glass path; the eyepiece and spectacles are not modelled. White light is
// summed over the photopic V(lambda) (white_light.hpp). Of the eye its colour error is modelled, which is opposite to
// that of glass in the beam: a wide exit pupil is helped by some glass, a narrow one suffers all of it. The eye's other
// faults, and rods, which resolve 10' to 20' at best (common practice, no source), are not.
#pragma once

#include <optional>

#include "study/image/aberrations.hpp"
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
    double white_peak = 0;     ///< likewise in white light, at the best focus for that
    Millimetres focus{0};      ///< that focus, behind the field stop
    Aberrations aberrations;   ///< green
    Millimetres spot_rms{0};   ///< radius about its middle in white light
    glm::dvec2 blue_shift{0};  ///< blue chief ray against the green one, mm
    glm::dvec2 red_shift{0};
    std::array<std::vector<glm::dvec2>, wavelength_count> spots;  ///< from the middle, mm
    PointSpread spread;         ///< of white light, relative to its perfect peak
    double energy_in_disc = 0;  ///< light within the Airy disc's radius (a perfect image: 0.838)
    std::optional<Millimetres> half_energy_radius;  ///< nothing: beyond the grid

    double seen_peak = 0;  ///< white peak on the retina, at the focus that the eye would choose
    Millimetres seen_focus{0};  ///< where green light comes to a focus then, behind the field stop
    Arcminutes blur{0};         ///< on the retina, twice the spot's root-mean-square radius
    Arcminutes colour_seen{0};  ///< `lateral_colour` at the eye

    /// Blue (F) against red (C).
    [[nodiscard]] Millimetres lateral_colour() const {
        return {glm::length(blue_shift - red_shift)};
    }
};

struct EyeImage {
    Eye eye = Eye::left;
    double working_focal_ratio = 0;  ///< of the cone that arrives: 1 / (2 sin U) of its rim
    Millimetres airy_radius{0};
    Millimetres depth_of_focus{0};  ///< one way
    Millimetres spherical{0};       ///< focus of the rim less that of the middle rays, green
    Millimetres blue_shift{0};      ///< focus of blue less that of green near the axis
    Millimetres red_shift{0};
    Arcseconds perfect_resolution{0};
    bool is_corrected = false;  ///< a shifter made for glass takes part of the error away
    Millimetres pupil{0};       ///< width of the beam that enters the eye
    double bare_peak = 1;       ///< seen peak at the same telescope, magnification and pupil with
                                ///< neither head nor glass: its own colour and the eye's alone
    Millimetres bare_focus{0};  ///< `seen_focus` there, behind where green light is sharp
    /// Only where sharpness is missed and `pupil` hides that: times the present magnification from which on it shows.
    std::optional<double> shows_from;
    PointImage axis;
    PointImage edge;  ///< where green light is worst of four places: right, up, left, down

    /// Blue against red.
    [[nodiscard]] Millimetres axial_colour() const { return blue_shift - red_shift; }
    /// How much wider than the perfect image's is the circle that holds half of the light; nothing: very much.
    [[nodiscard]] std::optional<double> widening(const PointImage& image) const;
    /// Sharpness that is kept there: the seen peak over that without head and glass. Above 1: the glass undoes some of
    /// the eye's colour.
    [[nodiscard]] double kept(const PointImage& image) const { return image.seen_peak / bare_peak; }
};

/// Judgement of one place: good where 0.9 is kept or the blur stays below what an eye resolves, soft below 0.7 where
/// the exit pupil is under 1.5 mm, and hidden there at wider ones, whose blur the eye's own faults cover. The figures
/// are our own choice; 1.5' is half as much again as an eye of normal acuity resolves.
enum class Sharpness { good, fair, hidden, soft };
constexpr double kept_well = 0.9;
constexpr double kept_badly = 0.7;
constexpr Arcminutes seen_at_all{1.5};
constexpr Millimetres wide_pupil{1.5};
Sharpness sharpness_of(const EyeImage& eye, const PointImage& image);

/// What takes most of the peak away.
enum class ImageFault { nothing, colour, spherical, coma, astigmatism, other };
ImageFault main_fault(const EyeImage& eye, const PointImage& image);

/// The train with the drawtube as it stands; a focus out of reach is judged where it falls.
EyeImage image_quality(const Setup& setup, const Train& train, Eye eye, ImageEffort effort = {});

/// PointImage::white_peak on axis alone, at a tenth of the cost: enough to compare setups. Nothing when no image is
/// formed.
std::optional<double>
white_peak_on_axis(const Setup& setup, const Train& train, Eye eye, ImageEffort effort = {});

}  // namespace beamfork
