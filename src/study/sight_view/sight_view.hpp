// What each eye gets to see, told as optics: where a direction of the sky falls on the field stop, under
// which angle the eye sees that place, how the light of one point spreads there, and how much arrives. All
// of it comes from traced rays; scene/sight_view/sight_view_picture.hpp makes pictures of it.
//
// Sky directions are tangents of the angles from the axis as an observer beside the telescope sees them,
// who looks the same way: x to the right, y up. Places on the field stop are mm in its frame, x right and y
// up as the eye sees it. Apparent angles are radians at the eye, likewise.
#pragma once

#include <span>

#include "study/light/clipping.hpp"

namespace beamfork {

struct Report;

/// Where rays of one field point meet the plane on which this eye is focused, less the place where an
/// undisturbed image would have it, mm; for each traced line, the same rays for all. Empty: no light arrives.
struct Spread {
    std::array<std::vector<glm::dvec2>, wavelength_count> landings;
    std::vector<glm::dvec2> slopes;  ///< of the green rays against their middle, tangents
    [[nodiscard]] const std::vector<glm::dvec2>& operator[](std::size_t wavelength) const {
        return landings[wavelength];
    }
};

struct EyeSight {
    glm::dmat2 stop_from_slope{1.0};  ///< of chief rays, on the plane on which the eye is focused
    glm::dvec2 axis_image{0};  ///< where the middle of the sky's field falls, mm: misalignment
    Millimetres stop_radius{1};
    Millimetres eyepiece_focal_length{1};
    Degrees apparent_field{50};
    Millimetres aperture{1};  ///< diameter that works and fits the eye's pupil
    double obstruction = 0;   ///< diameter in the middle of it, as a share of it
    double light = 1;     ///< share of the light on `aperture` that goes this way: what faces, the
                          ///< division and the shadow of a secondary with its vanes leave
    double surface = 1;   ///< brightness of a surface against the naked eye's, 0..1
    double limiting = 6;  ///< faintest star on the axis, magnitudes
    std::array<Spread, 5>
        nodes;              ///< middle, then right, top, left, bottom at 0.9 of the stop's radius
    EyeClipping lit;        ///< relative illumination over the field (relative_at)
    PerWavelength focus{};  ///< how far behind green each traced line comes to its focus, mm

    /// Angle at the eye per angle on the sky.
    [[nodiscard]] double magnification() const;
};
constexpr double node_radius = 0.9;

/// Numbers alone leave `nodes` empty and cost a small part.
enum class SightDetail : std::uint8_t { whole, numbers };

/// Behind the splitter, with the light that its dividing face and all surfaces leave (study/light/brightness), and the
/// shadow of the secondary and its vanes.
EyeSight eye_sight(const Setup& setup,
                   const Report& report,
                   Eye eye,
                   SightDetail detail = SightDetail::whole);

/// One eye with the same eyepiece right behind the same telescope: no diagonal, shifter or head.
EyeSight
one_eye_sight(const Setup& setup, const Report& report, SightDetail detail = SightDetail::whole);

/// Where the rays of a node seem to come from, in white light, mm from the node. An eye wants blue farther out than red
/// (study/image/white_light), as glass in the beam sends it: so it undoes glass, and of a colour that it has out of
/// focus by as much as without any telescope it notices nothing (common knowledge, no source). What is left beyond
/// that is drawn. Ray i is taken at the i-th of `lines`, indices into white_lines, and so on round.
std::vector<glm::dvec2>
noticed_spread(const EyeSight& sight, const Spread& node, std::span<const std::size_t> lines);

glm::dvec2 stop_of_sky(const EyeSight& sight, glm::dvec2 sky);
glm::dvec2 sky_of_stop(const EyeSight& sight, glm::dvec2 stop);

/// In the middle an eyepiece shows a place p of its field stop under the angle p / f; towards the edge the
/// stated apparent field is reached by a term in p cubed, as distortion of the third order goes (W. J.
/// Smith, Modern Optical Engineering, 4th ed., ch. 3).
glm::dvec2 apparent_of_stop(const EyeSight& sight, glm::dvec2 stop);
glm::dvec2 stop_of_apparent(const EyeSight& sight, glm::dvec2 apparent);

/// Faintest star: 6.0 for the naked eye (common practice, no source) plus 5 log10 of aperture over eye pupil
/// plus 2.5 log10 of the light's share (light grasp, common texts).
double limiting_magnitude(Millimetres aperture, Millimetres eye_pupil, double light);

}  // namespace beamfork
