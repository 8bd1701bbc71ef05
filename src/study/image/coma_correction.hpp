// Coma correctors at work: how much of the main mirror's coma each takes, by its real distance to the image.
//
// A paraboloid of focal length f and radius a gives a star at the field slope theta the wavefront error
// W = theta a^3 / (4 f^2) (p . e) |p|^2, for a pupil point p in units of a and the field's direction e: the tangential
// coma 3 theta / (16 N^2) (W. J. Smith, Modern Optical Engineering, 4th ed., reflecting systems; third order). In image
// height h and cone half-angle u it is h u^3 / 4 whatever the focal length: an ideal corrector takes off that much,
// behind any telescope, and leaves the higher orders, astigmatism and the curved field as they are. A classical
// Cassegrain has the coma of a paraboloid of its focal length; a lens that obeys the sine condition has none, and
// gets as much the other way.
//
// Assumption, no source: all of it inside the window; outside, the share falls by 3 x / d for a spacing x beyond the
// window and d from the lens to the image. So it would if the corrector's coma came from spherical aberration met
// off the middle, which goes with the cube of the beam's width at the lens (third order). Real ones also add
// spherical aberration there.
#pragma once

#include <optional>
#include <vector>

#include "study/image/wavefront.hpp"

namespace beamfork {

/// One corrector of a path; lengths in light path (reduced).
struct ComaCorrection {
    std::size_t part = 0;
    Millimetres wanted{0};         ///< from its shoulder to the image
    Millimetres window{0};         ///< either way of it
    Millimetres spacing{0};        ///< real: to where the eye wants the image, as the parts stand
    Millimetres lens_to_image{0};  ///< at the wanted spacing
    double earlier_factor = 1;     ///< of the lenses before it: its cone is that much slower
    /// How far the spacing lies outside the window; negative: too near; 0 inside.
    [[nodiscard]] Millimetres beyond() const;
    /// Of the mirror's coma that it takes, 0..1.
    [[nodiscard]] double share() const;
};

/// In the order of the light.
std::vector<ComaCorrection> coma_corrections(const Setup& setup, const EyePath& path);

/// Takes the correctors' shares off a wavefront from that field point, whose middle ray runs along `chief`. It needs
/// rays at three places of the pupil not in line; with fewer it is left as it is.
void take_coma(Wavefront& wavefront,
               const std::vector<ComaCorrection>& corrections,
               const Train& train,
               FieldSlope field,
               const Direction& chief);

}  // namespace beamfork
