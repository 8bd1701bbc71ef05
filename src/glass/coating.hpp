// Coatings: the share of the light that a polished face lets through, or a mirror throws back, at the
// middle of the visible. Shares run from 0 to 1, indices are relative to air.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/units.hpp"

namespace beamfork {

enum class AntiReflection { uncoated, single_layer, multi_layer };
enum class MirrorCoating { aluminium, enhanced_aluminium, silver, dielectric };

/// In the order of the enums, as in files and on screen.
std::vector<std::string> anti_reflection_words();
std::vector<std::string> mirror_coating_words();

/// Index of magnesium fluoride near 550 nm (M. J. Dodge, Appl. Opt. 23, 1980-1985, 1984; from memory).
inline constexpr double magnesium_fluoride_index = 1.38;
/// Index taken for the lenses of an objective, shifter or eyepiece, whose glass is not asked: crown glass.
inline constexpr double lens_glass_index = 1.52;

/// Unpolarised light at a bare face between two media: the mean of Fresnel's two equations
/// (E. Hecht, Optics, sec. 4.6; from memory). 1 beyond the critical angle.
double fresnel_reflectance(double n_before, double n_after, Radians incidence);

/// A face with a layer a quarter of a wave thick, at normal incidence: ((n1^2 - n0 n2) / (n1^2 + n0 n2))^2
/// (H. A. Macleod, Thin-Film Optical Filters, ch. 4; from memory).
double quarter_wave_reflectance(double n_before, double n_layer, double n_after);

/// Single layer: magnesium fluoride. Multi-layer: 0.5 %, the cautious end of 0.25 to 0.5 % (common practice,
/// no source). 0 where both media are the same: a cemented joint.
double face_reflectance(AntiReflection coating, double n_before, double n_after, Radians incidence);

/// Of a mirror at the middle of the visible; common practice, no source: protected aluminium 0.88, enhanced
/// aluminium 0.95, protected silver 0.97, dielectric 0.99.
double mirror_reflectance(MirrorCoating coating);

/// What is done to a surface against loss of light. Which of it matters follows from what the surface is.
struct Coating {
    AntiReflection face = AntiReflection::multi_layer;  ///< of polished faces and lenses
    int lens_faces = 2;                                 ///< air-to-glass faces of an ideal lens
    MirrorCoating mirror = MirrorCoating::aluminium;
    std::optional<double>
        stated_share;  ///< what goes on here, whatever else holds: a beam splitter
    /// Of a polished face: what goes on in place of its coating's share, where a filter's transmission is stated.
    std::optional<double> transmission;
    bool operator==(const Coating&) const = default;
};

}  // namespace beamfork
