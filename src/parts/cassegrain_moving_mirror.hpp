// A moving-mirror Cassegrain: a curved mirror with a hole, a small one in front of it that spreads the light, and
// focusing by moving the primary, so that back focus, focal length and f-number change together. What moves is the
// primary alone: the drawtube (or the visual back, a focuser without travel) stays where it is held.
//
// Both mirrors are true conics, by their figure behind a corrector plate or a meniscus (parts/mirror_figure.hpp). They
// are perfect on the axis at the stated back focus; elsewhere the spherical aberration of such a pair appears. The two
// faces of what stands in front lose as much light as coated in several layers: an assumption.
//
// The light's pupil is the main mirror's rim, also behind a corrector: where the corrector sends the rim's light a
// little outward, the main mirror is that much wider than the aperture.
//
// Part frame: the vertex of the primary in its middle position at the origin, light comes along +z and leaves
// along +z through the hole. Sizes follow from the fields by the two-mirror formulas
// (W. J. Smith, Modern Optical Engineering, 4th ed., two-component systems).
#pragma once

#include "parts/balance.hpp"
#include "parts/kind.hpp"
#include "parts/mirror_figure.hpp"

namespace beamfork {

/// What a position of the primary means.
struct MirrorFocus {
    Millimetres back_focus{0};
    Millimetres focal_length{0};
};

struct CassegrainMovingMirror {
    static constexpr std::string_view key = "cassegrain_moving_mirror";
    static constexpr std::string_view label = "Moving-mirror Cassegrain";
    static constexpr std::string_view help =
        "A short telescope with two curved mirrors that focuses by moving the large one: more "
        "light path means more focal length.";
    static constexpr Role role = Role::telescope;

    Millimetres aperture{200};
    Millimetres focal_length{2000};         ///< of the whole, at the stated back focus
    Millimetres back_focus{130};            ///< for which it was designed
    Millimetres primary_focal_length{400};  ///< of the large mirror alone
    Millimetres rear_face{
        110};  ///< from the primary's vertex to the drawtube's rear face, racked in
    Millimetres secondary_diameter{62};
    std::optional<Millimetres> holder_diameter;  ///< of what stands in the light, if wider
    Millimetres baffle_diameter{38};             ///< of the tube in the primary's hole, inner
    Millimetres baffle_length{150};              ///< from the primary towards the sky
    Millimetres rear_port_diameter{38};
    Millimetres rear_port_position{70};  ///< behind the primary's vertex
    Millimetres travel_up{8};            ///< of the primary towards the sky: focus moves out
    Millimetres travel_down{4};          ///< of the primary away from the sky: focus moves in
    MirrorCoating coating = MirrorCoating::aluminium;  ///< of both mirrors
    MirrorFigure figure = MirrorFigure::unknown;
    Balance balance{};

    bool operator==(const CassegrainMovingMirror&) const = default;
    static std::vector<Field<CassegrainMovingMirror>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;

    [[nodiscard]] Millimetres obstruction() const;
    /// The main mirror's rim over its vertex.
    [[nodiscard]] Millimetres rim_height() const;
    /// Absolute value of the small mirror's focal length |f2| (it spreads the light).
    [[nodiscard]] Millimetres secondary_focal_length() const;
    /// From the primary's middle position to the secondary.
    [[nodiscard]] Millimetres mirror_distance() const;
    /// Its mirrors and corrector for a star at the stated back focus.
    [[nodiscard]] MirrorDesign design() const;
    /// Focal length F = f1 (1 + b / |f2|), b from the secondary to the image, and back focus with the primary
    /// moved by `moved` towards the sky, for the sky or a target that far from its rim. A primary so far down
    /// that no image forms counts as one whose image lies very far out.
    [[nodiscard]] MirrorFocus focus_at(Millimetres moved,
                                       std::optional<Millimetres> distance) const;
    /// Where the primary must stand so that the image falls at this back focus; it may be beyond its travel.
    [[nodiscard]] Millimetres moved_for(Millimetres back_focus_wanted,
                                        std::optional<Millimetres> distance) const;
    /// mm of focal length gained per mm of back focus: f1 / |f2|.
    [[nodiscard]] double focal_length_per_back_focus() const;
};

}  // namespace beamfork
