// The light over the field of one eye as stacked bands: what arrives, and what each opening takes.
#pragma once

#include <string>
#include <vector>

#include "scene/light/light_at_stops_rows.hpp"
#include "ui/kit/area.hpp"

namespace beamfork {

/// The openings that take light from either eye: a name's place in this list is its band's colour.
std::vector<std::string> opening_names(const LightRows& rows);
/// Null when the opening takes nothing from this eye.
const StopShare* share_of(const EyeLightRows& eye, const std::string& name);
ImU32 band_colour(std::size_t place);

/// Light from 0 at the foot to 1 at the head, over the field from its middle at the left to its edge.
/// The scale at its left is drawn for the left eye alone: the other plot stands beside it.
void draw_light_plot(ImDrawList& list,
                     const Area& area,
                     const LightRows& rows,
                     const EyeLightRows& eye);

}  // namespace beamfork
