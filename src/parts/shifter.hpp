// A focus shifter: a lens that moves the image outward (negative lens: more magnification) or inward
// (positive lens: less), so that a splitter head reaches focus.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

inline constexpr std::string_view stated_gain_key = "stated_gain_mm";

enum class ShifterGiven { focal_length, factor_and_gain };

struct Shifter {
    static constexpr std::string_view key = "shifter";
    static constexpr std::string_view label = "Focus shifter";
    static constexpr std::string_view help =
        "A lens that moves the image outward and magnifies it; how much follows from its distance "
        "to the field stop.";
    static constexpr Role role = Role::chain;
    static constexpr bool holds_lens = true;
    static constexpr std::string_view measured_by =
        "Focus with and without the shifter at a scale far off: the drawtube's travel between is "
        "the gain, the ratio of the fields is the factor.";

    ShifterGiven given = ShifterGiven::factor_and_gain;
    Millimetres focal_length{-66};  ///< negative spreads the light
    double stated_factor = 2.6;
    Millimetres stated_gain{65};
    Millimetres lens_offset{5};  ///< lens behind the entry face; negative: in front of it
    Millimetres length{0};       ///< what the cell adds between its neighbours
    Millimetres clear_diameter{22};
    std::optional<Millimetres> corrected_glass;   ///< whose spherical and colour error it cancels
    std::optional<double> corrected_focal_ratio;  ///< N of the beam in that glass
    AntiReflection coating = AntiReflection::multi_layer;
    Mount mount{};

    bool operator==(const Shifter&) const = default;
    static std::vector<Field<Shifter>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
    /// The lens's focal length, given or from the stated pair.
    [[nodiscard]] Millimetres lens_focal_length() const;
};

/// A thin lens from a stated pair: factor M and gain g hold at image distance d = g M / (M - 1), for a
/// focal length -g M / (M - 1)^2, both in mm (thin-lens equation: 1/s - 1/|f| = 1/d, M = d/s, g = d - s).
struct StatedPair {
    Millimetres focal_length;
    Millimetres image_distance;
};
StatedPair lens_of_stated_pair(double factor, Millimetres gain);

/// Real factor 1 - d/f and real gain d - d/factor of a thin lens at image distance d.
double shifter_factor(Millimetres focal_length, Millimetres image_distance);
Millimetres shifter_gain(Millimetres focal_length, Millimetres image_distance);

}  // namespace beamfork
