// A star diagonal with a flat mirror: turns the light by 90 degrees, all of its path is air.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

struct MirrorDiagonal {
    static constexpr std::string_view key = "mirror_diagonal";
    static constexpr std::string_view label = "Mirror diagonal";
    static constexpr std::string_view help =
        "A flat mirror that turns the light by 90° so that one looks down in comfort.";
    static constexpr Role role = Role::chain;
    static constexpr bool turns_light = true;

    Millimetres entry_leg{45};  ///< entry face to mirror, along the axis
    Millimetres exit_leg{40};   ///< mirror to exit face
    Millimetres clear_diameter{40};
    Degrees turned{0};  ///< about the incoming axis; 0 looks up
    MirrorCoating coating = MirrorCoating::enhanced_aluminium;
    std::optional<Millimetres> stated_light_path;
    Mount mount{};

    bool operator==(const MirrorDiagonal&) const = default;
    static std::vector<Field<MirrorDiagonal>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
};

/// The field for turning a diagonal about the incoming light.
FieldInfo turned_info();

}  // namespace beamfork
