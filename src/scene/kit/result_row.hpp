// A result of a report as a row of numbers, named and explained by the table of results (study/results).
#pragma once

#include "scene/kit/value_row.hpp"
#include "study/results/results.hpp"

namespace beamfork {

/// Under its short name; `value` in the result's unit, with as many decimals as the table says.
ValueRow result_row(const ResultInfo& result, double value);
/// With other decimals.
ValueRow result_row(const ResultInfo& result, double value, int decimals);

}  // namespace beamfork
