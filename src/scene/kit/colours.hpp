// The colours by their role, from the Okabe-Ito set that colour-blind eyes keep apart.
//
// Okabe M., Ito K., "Color Universal Design (CUD): How to make figures and presentations that are
// friendly to colorblind people", 2002 (rev. 2008), the eight-colour set. Never colour alone: each
// role also has a shape or a word. Undivided beam, glass, ground and metal are the house's own tints.
#pragma once

#include <cstddef>
#include <cstdint>

#include <glm/glm.hpp>

namespace beamfork {

using Rgb = glm::vec3;  ///< linear, 0..1

/// Linear RGB of an sRGB hex colour such as 0x56B4E9.
Rgb linear_rgb(std::uint32_t srgb_hex);

/// What something is, by which it is told apart; its colour follows.
enum class ColourRole : std::uint8_t {
    undivided_beam,
    left_arm,
    right_arm,
    clipped,    ///< a ray that dies; it ends in a cross
    shortfall,  ///< focus that is not reached, and its dimension
    good,       ///< margin that suffices
    glass,      ///< edges of prisms and lenses
    dimension,  ///< neutral measuring lines
    metal,
    metal_dark,
    ghost,       ///< what a change would move, and the other train of a comparison
    edge_star,   ///< light of the one star at the edge of the field, where stars are shown alone
    blue_light,  ///< the three colours that are traced, where they are told apart ...
    green_light,
    red_light,  ///< ... each with its name
};
inline constexpr std::size_t colour_role_count = 15;

/// The sRGB hex of a role, for panels and pages.
constexpr std::uint32_t srgb_hex(ColourRole role) {
    switch (role) {
    case ColourRole::undivided_beam: return 0xF6F1E6;
    case ColourRole::left_arm: return 0x56B4E9;
    case ColourRole::right_arm: return 0xF0E442;
    case ColourRole::clipped: return 0xD55E00;
    case ColourRole::shortfall: return 0xCC79A7;
    case ColourRole::good: return 0x009E73;
    case ColourRole::glass: return 0xA9D3E6;
    case ColourRole::dimension: return 0xC9D2DC;
    case ColourRole::metal: return 0x7C8896;
    case ColourRole::metal_dark: return 0x39414B;
    case ColourRole::ghost: return 0x009E73;
    case ColourRole::edge_star: return 0x0072B2;
    case ColourRole::blue_light: return 0x5A78FF;
    case ColourRole::green_light: return 0x63D471;
    case ColourRole::red_light: return 0xFF5A4F;
    }
    return 0xFFFFFF;
}

/// The linear RGB of a role. Light, lines and marks of a Frame keep the role itself: render gives it its colour.
inline Rgb role_rgb(ColourRole role) { return linear_rgb(srgb_hex(role)); }

}  // namespace beamfork
