// A refracting telescope: an ideal objective that obeys the sine condition at the world origin.
#pragma once

#include "parts/balance.hpp"
#include "parts/kind.hpp"

namespace beamfork {

struct Refractor {
    static constexpr std::string_view key = "refractor";
    static constexpr std::string_view label = "Refractor";
    static constexpr std::string_view help =
        "A telescope with a lens in front; the light cone starts here.";
    static constexpr Role role = Role::telescope;

    Millimetres aperture{80};
    Millimetres focal_length{480};
    Millimetres back_focus{120};  ///< focus behind the drawtube's rear face, racked fully in
    Millimetres blue_shift{0};
    Millimetres red_shift{0};
    std::optional<Millimetres> baffle_diameter;
    Millimetres baffle_position{300};  ///< behind the objective
    AntiReflection coating = AntiReflection::multi_layer;
    double lens_faces =
        4;  ///< from air to glass: 2 when cemented, 4 with an air space, 6 of three lenses
    Balance balance{};

    bool operator==(const Refractor&) const = default;
    static std::vector<Field<Refractor>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
};

}  // namespace beamfork
