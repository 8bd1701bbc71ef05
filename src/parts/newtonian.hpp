// A Newtonian telescope: a paraboloid at the lower end of an open tube, and a flat mirror near the upper end
// that turns the light sideways into the focuser. Its coma is real: it comes out of the trace.
//
// Part frame: the primary's vertex at the origin, light comes along +z, the focuser looks along +y. The
// secondary is an ellipse that looks like a circle of its minor axis from either mirror or focuser. Where nothing is
// stated it is centred on the light cone: shifted by minor axis / (4 N) towards the primary and as much away from the
// focuser.
#pragma once

#include "parts/balance.hpp"
#include "parts/kind.hpp"

namespace beamfork {

struct Newtonian {
    static constexpr std::string_view key = "newtonian";
    static constexpr std::string_view label = "Newtonian";
    static constexpr std::string_view help =
        "A telescope with a curved mirror at the bottom of its tube and a flat one that turns the "
        "light out sideways.";
    static constexpr Role role = Role::telescope;

    Millimetres aperture{200};
    Millimetres focal_length{1000};
    Millimetres back_focus{30};         ///< with the primary where it was made to sit
    Millimetres axis_to_drawtube{160};  ///< tube axis to the drawtube's rear face, racked in
    Millimetres secondary_minor_axis{52};
    std::optional<Millimetres> secondary_offset;  ///< towards the primary; 0: centred on the axis
    std::optional<Millimetres> holder_diameter;   ///< of what stands in the light, if wider
    double vane_count = 4;  ///< of the spider that carries the secondary; 0: carried by glass
    Millimetres vane_width{0.8};
    Millimetres tube_diameter{230};                    ///< inner
    Millimetres tube_overhang{140};                    ///< tube in front of the focuser's axis
    Millimetres primary_moved_up{0};                   ///< back focus grows by it
    MirrorCoating coating = MirrorCoating::aluminium;  ///< of both mirrors
    Balance balance{};

    bool operator==(const Newtonian&) const = default;
    static std::vector<Field<Newtonian>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;

    /// As stated, or what centres the secondary on the light cone.
    [[nodiscard]] Millimetres offset() const;
    /// Of the secondary and its holder together, as they stand in the light.
    [[nodiscard]] Millimetres obstruction() const;
    /// Share of the aperture's area in the shadow of the vanes, from the holder to the rim. The trace leaves them
    /// out: they are thinner than the rays stand apart, and the closed form is exact.
    [[nodiscard]] double vane_share() const;
    /// Along the axis from the secondary to the focus; grows as the primary moves up.
    [[nodiscard]] Millimetres secondary_to_focus() const;
    /// The primary's rim over its vertex.
    [[nodiscard]] Millimetres rim_height() const;
    /// Diameter at the focus whose light the secondary passes whole: (m F - l D) / (F - l) for a minor axis m
    /// at l before the focus; negative when it is too small even for the middle.
    [[nodiscard]] Millimetres fully_lit_field() const;
};

}  // namespace beamfork
