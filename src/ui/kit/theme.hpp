// The look of the window: one typeface in two sizes, dark blue-grey ground, colours by role, a 4-pixel grid.
//
// Everything is measured in `grid(n)`, n steps of 4 pixels at scale 1, or in the text size; nothing else, so
// that the whole window follows the screen's density and the user's text size.
#pragma once

#include <cstdint>

#include "scene/kit/colours.hpp"

#include <imgui.h>

namespace beamfork {

/// Fonts and style for a scale: the screen's density times Session::text_scale. Cheap when the fonts are
/// loaded for that scale already. When it returns true, they were loaded anew and the app must send the font
/// picture to the graphics card. Never between NewFrame and Render.
bool set_theme(float scale);

/// n steps of 4 pixels.
float grid(float steps);

enum class TextFace { regular, bold, large };
ImFont* font(TextFace face);

/// Surfaces and text of the window.
enum class Tone {
    ground,      ///< behind everything
    panel,       ///< a panel's face
    raised,      ///< buttons, entries
    raised_hot,  ///< the same under the pointer
    line,        ///< borders and splitters
    text,
    text_dim,  ///< units, captions
    accent,    ///< what is selected or in use
    danger     ///< refused input; readable text on a panel
};
ImU32 colour(Tone tone, float alpha = 1);
ImU32 colour(ColourRole role, float alpha = 1);
/// As a role's colour, lightened where needed to be read as text on a panel.
ImU32 text_colour(ColourRole role);

/// WCAG 2 contrast of two sRGB colours: 1 .. 21.
double contrast(std::uint32_t srgb_a, std::uint32_t srgb_b);
std::uint32_t srgb_hex(Tone tone);
std::uint32_t text_srgb_hex(ColourRole role);

}  // namespace beamfork
