// Magnification and field as rows of numbers with their formulas in words.
#pragma once

#include <vector>

#include "scene/kit/value_row.hpp"

namespace beamfork {

struct Report;

std::vector<ValueRow> magnification_rows(const Report& report);

}  // namespace beamfork
