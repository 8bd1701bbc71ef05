// A coma corrector at work, ready to show beside its fields.
#pragma once

#include <cstddef>
#include <vector>

#include "scene/kit/value_row.hpp"

namespace beamfork {

struct Report;

/// Empty for a part that is none.
std::vector<ValueRow> coma_correction_rows(const Report& report, std::size_t part);

}  // namespace beamfork
