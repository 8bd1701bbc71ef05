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
constexpr Millimetres nose_wants{15};

/// Both eyepieces beside each other.
struct EyepieceSpacing {
    Millimetres pupil_distance{63};  ///< of the observer
    Millimetres narrowest;           ///< the head's range
    Millimetres widest;
    Millimetres axis_distance{63};  ///< between the eyepieces' axes as they stand
    Millimetres gap;                ///< between their housings; negative: they would overlap
    Millimetres widest_housing;     ///< that leaves the nose its room
    bool is_in_range = true;
};

/// How much of the field the observer's pupil can take in.
struct SeenField {
    Millimetres eye_relief{15};   ///< of the eyepiece
    Millimetres eye_needs;        ///< nearest that the eye's pupil comes to the last lens
    Millimetres too_far;          ///< eye's pupil behind the exit pupil
    double full_light_share = 1;  ///< of the field's width, whose beams enter the pupil whole
    double half_light_share = 1;  ///< whose beams enter by half or more
};

/// What hangs on the drawtube. Moments about the point where the drawtube's axis leaves the
/// racked-in focuser, with the tube level.
struct Load {
    Grams mass;                         ///< of all parts behind the drawtube whose mass is stated
    std::vector<std::size_t> unstated;  ///< parts whose mass is not
    Point centre{0.0};                  ///< of that mass, world
    Millimetres lever;                  ///< from the clamp to the centre, along the drawtube
    Millimetres sideways;               ///< of the centre, to the right of the drawtube's axis
    NewtonMetres bending;               ///< mass x gravity x lever
    NewtonMetres twisting;              ///< mass x gravity x sideways
    std::optional<Grams> rated;         ///< as the focuser's maker states it
};

/// What the load does to a balanced tube.
struct BalanceShift {
    Millimetres
        lever;  ///< from the tube's balance point back to the load's centre; negative: ahead
    Millimetres shift;  ///< of the balance point, m a / (m + tube), towards the load
    std::optional<Grams> counterweight;  ///< that restores it at the stated distance, m a / b
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

/// Shares of the field's width seen by an eye pupil `too_far` behind an exit pupil: a beam at angle t
/// stands too_far tan t aside there (plane geometry).
SeenField seen_field(Millimetres eye_relief,
                     Millimetres eye_needs,
                     Millimetres eye_pupil,
                     Millimetres exit_pupil,
                     Degrees field);

/// Counterweight that balances `mass` at `lever` from a distance of `arm`: mass x lever / arm.
Grams counterweight_for(Grams mass, Millimetres lever, Millimetres arm);

}  // namespace beamfork
