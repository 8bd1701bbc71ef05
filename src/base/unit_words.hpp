// The words for units that people type beside a number, by what they measure.
#pragma once

#include <span>
#include <string_view>

#include "base/typed_number.hpp"

namespace beamfork {

/// numerator / denominator of the measure's base unit: mm, degree, dioptre, gram, percent or times.
struct UnitWord {
    std::string_view word;
    double numerator = 1;
    double denominator = 1;
};

struct UnitMeasure {
    std::string_view name;     ///< "a length"
    std::string_view offered;  ///< "mm, cm, m, in or ft": what an error names
    std::span<const UnitWord> words;
};

/// Length, angle, eye correction, mass, percent, times, or a plain number, in this order.
std::span<const UnitMeasure> unit_measures();
const UnitMeasure& measure_of(NumberUnit unit);
/// The entry's own unit as one of its measure's words.
UnitWord own_word(NumberUnit unit);

}  // namespace beamfork
