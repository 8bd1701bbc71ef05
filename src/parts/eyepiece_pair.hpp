// A matched pair of eyepieces, one in each seat: the field stop is where the image must fall.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"

namespace beamfork {

struct EyepiecePair {
    static constexpr std::string_view key = "eyepiece_pair";
    static constexpr std::string_view label = "Eyepiece pair";
    static constexpr std::string_view help =
        "Two equal eyepieces; the image must fall on their field stops.";
    static constexpr Role role = Role::eyepiece;

    Millimetres focal_length{25};
    Degrees apparent_field{50};
    Millimetres field_stop{21};  ///< diameter
    Millimetres field_stop_depth{
        0};  ///< in front of the shoulder (inside the barrel); negative: behind it
    Millimetres barrel_clear{28};
    Millimetres barrel_length{25};
    Millimetres outer_diameter{36};
    Millimetres eye_relief{15};
    /// How far each eyepiece sits off the middle of its seat, as the play of its barrel allows.
    Millimetres left_play_x{0};
    Millimetres left_play_y{0};
    Millimetres right_play_x{0};
    Millimetres right_play_y{0};
    AntiReflection coating = AntiReflection::multi_layer;
    double lens_faces = 6;  ///< from air to glass
    /// Percent that a filter in either barrel lets through.
    std::optional<double> left_filter;
    std::optional<double> right_filter;
    Millimetres filter_glass{2};  ///< thickness of such a filter; usual: common practice, no source
    Mount mount{};

    bool operator==(const EyepiecePair&) const = default;
    static std::vector<Field<EyepiecePair>> fields();
    /// Ends at the field stop, with its exit frame on the field stop.
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const;
    [[nodiscard]] std::optional<double> filter(Eye eye) const {
        return eye == Eye::left ? left_filter : right_filter;
    }
    /// How far the glass of a filter in that eye's barrel moves the image outward, t (1 - 1/n) (plane parallel plate,
    /// optics textbooks); 0 without one.
    [[nodiscard]] Millimetres filter_shift(Eye eye) const;
};

/// Eyepiece travel for one dioptre, f^2 / 1000 (W. J. Smith, Modern Optical Engineering, 4th ed., p. 290).
Millimetres travel_per_dioptre(Millimetres eyepiece_focal_length);

}  // namespace beamfork
