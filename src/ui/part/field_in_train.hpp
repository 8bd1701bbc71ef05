// What the train says of a part's field: with what it begins once it is stated, and how far its slider goes.
#pragma once

#include <cstddef>
#include <string>

#include "parts/field.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// Ticking "stated" should change nothing by itself: a value begins with what counts without it.
double first_value(const Ui& ui, std::size_t index, const FieldInfo& field);

/// A lens's slider ends at the glass.
FieldInfo within_room(const Ui& ui, std::size_t index, FieldInfo field);

/// What is to be known below a field: that another one rules, or where a stated pair of numbers holds; else empty.
std::string note_below(const Ui& ui, std::size_t index, const FieldInfo& field);

}  // namespace beamfork
