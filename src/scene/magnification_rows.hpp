// Magnification and field as rows of numbers with their formulas in words.
#pragma once

#include <vector>

#include "scene/value_row.hpp"
#include "study/report.hpp"

namespace beamfork {

std::vector<ValueRow> magnification_rows(const Report& report);

}  // namespace beamfork
