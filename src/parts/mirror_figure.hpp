// The figure of a two-mirror telescope: which curves its main mirror and its secondary are ground to, and what stands in
// front to make up for them. Two telescopes of the same lengths and openings can differ in nothing else, and yet lose
// their sharpness at a very different rate when they are focused away from where they were made to be.
//
// A corrector plate or a meniscus is an ideal thin plate: it acts in one plane, alike for all colours, and is shaped so
// that a star on the axis is perfect at the design focus. Where light arrives parallel, a meniscus adds the same path
// whatever the mirrors do behind it, and so is traced as such a plate.
// Frame: the main mirror's vertex at the origin, light comes along +z. Lengths in mm.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "geometry/conic.hpp"
#include "geometry/phase_profile.hpp"
#include "parts/field.hpp"

namespace beamfork {

enum class MirrorFigure {
    unknown,             ///< traced as a paraboloid with a hyperboloid: an assumption
    spheres_with_plate,  ///< two spheres behind a corrector plate
    coma_free_with_plate,  ///< a sphere with a secondary that makes the pair coma-free, behind a plate
    spheres_with_meniscus,   ///< two spheres behind a meniscus
    paraboloid_hyperboloid,  ///< perfect on the axis without a plate
    coma_free_hyperboloids   ///< the pair without third-order coma
};

std::vector<std::string> mirror_figure_words();
FieldInfo mirror_figure_info();
/// All kinds of which one can be stated.
std::vector<MirrorFigure> known_mirror_figures();
bool has_front_plate(MirrorFigure figure);

/// A two-mirror telescope as designed, for a star.
struct MirrorDesign {
    double aperture = 0;
    double focal_length = 0;
    double primary_focal_length = 0;
    double secondary_focal_length = 0;  ///< its absolute value: it spreads the light
    double mirror_distance = 0;
    double focus_at = 0;  ///< z of the image
    double plate_at = 0;  ///< z of the corrector, negative
};

/// Conics as light meets them, z in the frame above: both mirrors' rims lie nearer to the sky than their middles.
struct MirrorShapes {
    Conic primary;
    Conic secondary;
    PhaseProfile plate;
};
MirrorShapes mirror_shapes(const MirrorDesign& design, MirrorFigure figure);

/// Third-order spherical aberration of the mirrors with their plate, the primary moved by `moved` towards the sky and the
/// image wherever that puts it: path of the rim's ray to the paraxial focus less the middle's, mm. For a target
/// `distance` from the main mirror's vertex. A mirror of radius R and conic constant K met at the height y at
/// magnification m has y^4 / (4 R^3) [K + ((m + 1) / (m - 1))^2], concave ones with a minus (D. J. Schroeder,
/// Astronomical Optics, 2nd ed., ch. 5 and 6, from memory); the plate adds what makes the design's sum zero.
double spherical_of_mirrors(const MirrorDesign& design,
                            const MirrorShapes& shapes,
                            double moved,
                            double distance = std::numeric_limits<double>::infinity());

}  // namespace beamfork
