// A star diagonal with a right-angle prism: turns the light by 90 degrees inside glass.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"
#include "parts/prisms.hpp"

namespace beamfork {

struct PrismDiagonal {
    static constexpr std::string_view key = "prism_diagonal";
    static constexpr std::string_view label = "Prism diagonal";
    static constexpr std::string_view help = "A right-angle prism that turns the light by 90°; its "
                                             "glass makes the light path shorter than its legs.";
    static constexpr Role role = Role::chain;
    static constexpr bool turns_light = true;
    static constexpr std::string_view measured_by = light_path_by_refocusing;

    Millimetres entry_leg{22};
    Millimetres exit_leg{22};
    Millimetres prism_width{25};
    Millimetres clear_diameter{24};
    std::string glass = "N-BAK4";
    FaceCoating hypotenuse = FaceCoating::bare;
    AntiReflection coating = AntiReflection::multi_layer;
    Degrees turned{0};
    std::optional<Millimetres> stated_light_path;
    Mount mount{};

    bool operator==(const PrismDiagonal&) const = default;
    static std::vector<Field<PrismDiagonal>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
};

/// The choice between a bare and a mirrored reflecting face, and its words.
FieldInfo coating_info();
std::vector<std::string> coating_words();

}  // namespace beamfork
