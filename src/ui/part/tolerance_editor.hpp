// How well a part's values are known: below its fields, folded away until it is wanted.
#pragma once

#include "parts/part.hpp"
#include "ui/part/part_panel.hpp"

namespace beamfork {

/// One line for each number of the part: label, +- entry, unit, where the value is from. An emptied entry takes
/// the +- away.
void draw_tolerances(const PartUi& ui, std::size_t index, const Part& part);

}  // namespace beamfork
