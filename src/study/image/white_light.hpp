// White light as the eye weighs it: the wavelengths over which an image is summed, how bright each of them looks and of
// which colour, where an eye focuses it, and its wavefront from those of the traced lines.
#pragma once

#include <array>
#include <vector>

#include "study/image/wavefront.hpp"

namespace beamfork {

/// One wavelength of light of even spectrum. x, y, z are the colour matching functions of the CIE 1931 observer; y is
/// the photopic V(lambda) of CIE 1924 (CIE 15:2004, Colorimetry, 5 nm tables; read in two transcriptions that agree).
struct WhiteLine {
    Micrometres wavelength;
    double x, y, z;
};

/// Every 15 nm. Half that step changes no peak by 0.003, for up to 250 mm of glass at f/5 and exit pupils of up to
/// 7 mm (tests/reference/white_light.py).
inline constexpr std::array white_lines{
    WhiteLine{nanometres(420), 0.13438, 0.00400, 0.64560},
    WhiteLine{nanometres(435), 0.32850, 0.01684, 1.62296},
    WhiteLine{nanometres(450), 0.33620, 0.03800, 1.77211},
    WhiteLine{nanometres(465), 0.25110, 0.07390, 1.52810},
    WhiteLine{nanometres(480), 0.09564, 0.13902, 0.81295},
    WhiteLine{nanometres(495), 0.01470, 0.25860, 0.35330},
    WhiteLine{nanometres(510), 0.00930, 0.50300, 0.15820},
    WhiteLine{nanometres(525), 0.10960, 0.79320, 0.05725},
    WhiteLine{nanometres(540), 0.29040, 0.95400, 0.02030},
    WhiteLine{nanometres(555), 0.51205, 1.00000, 0.00575},
    WhiteLine{nanometres(570), 0.76210, 0.95200, 0.00210},
    WhiteLine{nanometres(585), 0.97860, 0.81630, 0.00140},
    WhiteLine{nanometres(600), 1.06220, 0.63100, 0.00080},
    WhiteLine{nanometres(615), 0.93840, 0.44120, 0.00024},
    WhiteLine{nanometres(630), 0.64240, 0.26500, 0.00005},
    WhiteLine{nanometres(645), 0.36080, 0.13820, 0.00001},
    WhiteLine{nanometres(660), 0.16490, 0.06100, 0.00000},
    WhiteLine{nanometres(675), 0.06360, 0.02320, 0.00000},
    WhiteLine{nanometres(690), 0.02270, 0.00821, 0.00000},
};

/// How much of each traced line (F, e, C) makes up what a ray does at that wavelength: a parabola through the three in
/// the index of N-BAK4 there, by the catalogue. For every glass of the catalogue 1/n is within 4e-5 of its own, which
/// moves the focus behind 150 mm of glass by 0.006 mm at most, and that where V is below 0.01. An objective's colour curve is that parabola too
/// (assumption: three points are all that is known of it).
PerWavelength shares_of_traced(Micrometres wavelength);
/// The same for each of `white_lines`.
const std::array<PerWavelength, white_lines.size()>& white_shares();

/// How short-sighted (negative) an eye is for a wavelength: the reduced chromatic eye of L. N. Thibos, M. Ye, X. Zhang
/// and A. Bradley, Applied Optics 31, 3594 (1992), in focus near 590 nm.
constexpr Dioptres eye_refraction(Micrometres wavelength) {
    return {1.68524 - 633.46 / (in_nanometres(wavelength) - 214.102)};
}

/// How much farther out than green (the e line) an eye behind that eyepiece wants the image of a wavelength. Blue comes
/// out positive, as glass in the beam shifts it.
Millimetres eye_wants_behind_green(Micrometres wavelength, Millimetres eyepiece_focal_length);

/// A wavefront of each traced line, from one field point.
using Colours = std::array<Wavefront, wavelength_count>;

/// Drops rays that did not get through at all three lines.
void keep_common_rays(Colours& traced);

/// One field point in white light: a wavefront for each of `white_lines`, all of the same rays.
class WhiteLight {
public:
    /// Of rays that are common to all lines.
    explicit WhiteLight(const Colours& traced);

    /// As the eye behind that eyepiece meets it: every colour moved by where the eye wants it, so that one place is
    /// sharp for all where each lies in its own.
    [[nodiscard]] WhiteLight through_eye(Millimetres eyepiece_focal_length) const;

    /// With V(lambda) as weights; every `step`-th line alone. Valid as long as this lives.
    [[nodiscard]] std::vector<WeightedWavefront> weighted(std::size_t step = 1) const;

private:
    std::vector<Wavefront> lines_;
};

/// How far behind green the objective by itself focuses each traced line, mm; a mirror none.
PerWavelength colour_of_objective(const EyePath& path);

/// The same rays as they would come from a telescope that makes a perfect image of each line, that many mm behind the
/// field stop's middle.
Colours perfect(const Colours& traced, const PerWavelength& focus);

}  // namespace beamfork
