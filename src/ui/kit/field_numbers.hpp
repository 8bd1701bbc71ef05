// Numbers of a field as a slider and an entry show them.
#pragma once

#include <string>

#include "parts/field.hpp"

namespace beamfork {

/// What a slider moves by: 1, 0.5, 0.1, 0.05 ... of the unit, at most 1/200 of the usual range or a little more.
double slider_step(const FieldInfo& field);

/// The nearest multiple of the step, as the decimal number it is meant to be, within what the field accepts.
double snapped(const FieldInfo& field, double value);

/// Short text for an entry: at most four decimals, no trailing zeros.
std::string entry_text(double value);

/// "Accepts 5 to 80 mm."
std::string accepted_range(const FieldInfo& field);

/// What an arrow key adds in an entry: a slider's step, ten of them with Shift, a tenth with Ctrl.
double key_step(const FieldInfo& field, bool is_coarse, bool is_fine);
/// The value and a step more or less, as the decimal number it is meant to be, within what the field accepts.
double stepped(const FieldInfo& field, double value, double step);

/// How an entry is used, for its help: what can be typed, what the arrow keys do.
std::string entry_hint(const FieldInfo& field);

}  // namespace beamfork
