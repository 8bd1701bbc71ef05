// A coma corrector for Newtonians: an ideal lens that takes the main mirror's coma away when its shoulder stands at
// the stated distance from the image (study/image/coma_correction.hpp says how much of it at another distance). It adds
// no fault of its own.
//
// Its shoulder is its rear face, where the next part begins. The lens is thin: with d from the lens to the image at
// the stated spacing, its focal length d / (1 - M) gives the stated factor M there (thin-lens equation).
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

struct ComaCorrector {
    static constexpr std::string_view key = "coma_corrector";
    static constexpr std::string_view label = "Coma corrector";
    static constexpr std::string_view help =
        "A lens that makes stars at the edge of a Newtonian's field round, when its shoulder "
        "stands at the right distance from the field stop.";
    static constexpr Role role = Role::chain;
    static constexpr bool holds_lens = true;

    double stated_factor = 1.1;    ///< at the stated spacing
    Millimetres spacing{55};       ///< from the shoulder to the image, in air
    Millimetres window{2};         ///< either way of it, inside which all coma is taken
    Millimetres lens_offset{-25};  ///< lens behind the entry face; negative: in front of it
    Millimetres length{10};        ///< entry face to shoulder: holds its neighbours apart
    std::optional<Millimetres> stated_light_path;  ///< entry face to shoulder
    Millimetres clear_diameter{44};
    AntiReflection coating = AntiReflection::multi_layer;
    double lens_faces = 4;  ///< from air to glass
    Mount mount{};

    bool operator==(const ComaCorrector&) const = default;
    static std::vector<Field<ComaCorrector>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;

    /// From the lens to the shoulder in light path.
    [[nodiscard]] Millimetres lens_to_shoulder() const;
    /// From the lens to the image at the stated spacing, in light path.
    [[nodiscard]] Millimetres lens_to_image() const;
    /// Infinite when the stated factor is 1.
    [[nodiscard]] Millimetres lens_focal_length() const;
};

}  // namespace beamfork
