// Erecting diagonals: a roof prism turns the light by 90 or 45 degrees and exchanges left and right as well as up
// and down, so that the image stands upright and the right way round.
#pragma once

#include "parts/kind.hpp"
#include "parts/mount.hpp"
#include "parts/prism_diagonal.hpp"

namespace beamfork {

/// `turn` is 90 or 45, in degrees.
template <int turn>
struct ErectingDiagonal {
    static_assert(turn == 90 || turn == 45);
    static constexpr std::string_view key =
        turn == 90 ? "erecting_diagonal_90" : "erecting_diagonal_45";
    static constexpr std::string_view label =
        turn == 90 ? "Erecting diagonal, 90°" : "Erecting diagonal, 45°";
    static constexpr std::string_view help =
        turn == 90
            ? "A roof prism that turns the light by 90° and shows everything upright and the right "
              "way round."
            : "A roof prism that turns the light by 45°, for daytime: upright and the right way "
              "round, with much glass.";
    static constexpr Role role = Role::chain;
    static constexpr bool turns_light = true;

    Millimetres entry_air{8};  ///< front face to the prism's entry face
    Millimetres exit_air{8};   ///< prism's exit face to the rear face
    Millimetres prism_width{22};
    Millimetres clear_diameter{21};
    std::string glass = "N-BAK4";
    FaceCoating roof = FaceCoating::bare;
    Degrees turned{0};
    std::optional<Millimetres> stated_light_path;
    Mount mount{};

    bool operator==(const ErectingDiagonal&) const = default;
    static std::vector<Field<ErectingDiagonal>> fields();
    [[nodiscard]] PartLayout layout(const LayoutContext& context) const;
    [[nodiscard]] std::optional<std::string> contradiction() const { return std::nullopt; }
};

using ErectingDiagonal90 = ErectingDiagonal<90>;
using ErectingDiagonal45 = ErectingDiagonal<45>;

extern template struct ErectingDiagonal<90>;
extern template struct ErectingDiagonal<45>;

}  // namespace beamfork
