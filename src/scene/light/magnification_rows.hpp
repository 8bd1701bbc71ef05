// Magnification and field as rows of numbers with their formulas in words.
#pragma once

#include <vector>

#include "scene/kit/value_row.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

std::vector<ValueRow> magnification_rows(const Report& report);

}  // namespace beamfork
