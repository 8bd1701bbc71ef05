// Fit: do both eyes get to both eyepieces, do the housings and the nose between them have room, how much of
// the field is seen with spectacles, and what hangs on the focuser. A mass that is not stated is not
// counted, and is said not to be.
#pragma once

#include <optional>
#include <vector>

#include "study/fit/clearance.hpp"
#include "study/fit/eye_height.hpp"
#include "study/fit/joints.hpp"
#include "study/fit/zenith.hpp"
#include "study/light/magnification.hpp"

namespace beamfork {

/// Room that a nose wants between two eyepieces. Common practice, no source: 15 to 20 mm.
constexpr double nose_wants_mm = 15;

/// Both eyepieces beside each other, mm.
struct EyepieceSpacing {
    double pupil_distance = 63;  ///< of the observer
    double narrowest = 0;        ///< the head's range
    double widest = 0;
    double axis_distance = 63;  ///< between the eyepieces' axes as they stand
    double gap = 0;             ///< between their housings; negative: they would overlap
    double widest_housing = 0;  ///< that leaves the nose its room
    bool is_in_range = true;
};

/// How much of the field the observer's pupil can take in.
struct SeenField {
    double eye_relief = 15;       ///< of the eyepiece, mm
    double eye_needs = 0;         ///< nearest that the eye's pupil comes to the last lens, mm
    double too_far = 0;           ///< eye's pupil behind the exit pupil, mm
    double full_light_share = 1;  ///< of the field's width, whose beams enter the pupil whole
    double half_light_share = 1;  ///< whose beams enter by half or more
};

/// What hangs on the drawtube. Moments in newton metres about the point where the drawtube's axis leaves the
/// racked-in focuser, with the tube level.
struct Load {
    double mass = 0;  ///< g, of all parts behind the drawtube whose mass is stated
    std::vector<std::size_t> unstated;  ///< parts whose mass is not
    Point centre{0.0};                  ///< of that mass, world
    double lever = 0;                   ///< from the clamp to the centre, along the drawtube, mm
    double sideways = 0;                ///< of the centre, to the right of the drawtube's axis, mm
    double bending = 0;                 ///< mass x gravity x lever, Nm
    double twisting = 0;                ///< mass x gravity x sideways, Nm
    std::optional<double> rated;        ///< g
};

/// What the load does to a balanced tube.
struct BalanceShift {
    double lever =
        0;  ///< from the tube's balance point back to the load's centre, mm; negative: ahead
    double shift = 0;  ///< of the balance point, m a / (m + tube), mm towards the load
    std::optional<double> counterweight;  ///< g that restores it at the stated distance, m a / b
};

struct Fit {
    EyepieceSpacing spacing;
    SeenField seen;
    std::optional<Clearance> tightest;
    ZenithRoom zenith;
    EyeHeight eyes;
    Load load;
    std::optional<BalanceShift> balance;  ///< where tube mass and balance point are stated
    std::vector<Joint> joints;
};

/// Never fails: the train has been built.
Fit fit(const Setup& setup, const Train& train, const Magnification& magnification);

/// Where each part's mass is taken to sit: the middle of the volume of its bodies, as if all were equally
/// dense; both arms together.
Point centre_of_mass(const Train& train, std::size_t part);

/// Shares of the field's width seen by an eye pupil `too_far` mm behind an exit pupil: a beam at angle t
/// stands too_far tan t aside there (plane geometry).
SeenField
seen_field(double eye_relief, double eye_needs, double eye_pupil, double exit_pupil, Degrees field);

/// Counterweight that balances `mass` at `lever` from a distance of `arm`: mass x lever / arm.
double counterweight_for(double mass, double lever, double arm);

}  // namespace beamfork
