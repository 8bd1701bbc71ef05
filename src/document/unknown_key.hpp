// What to say of a key that a part kind does not have: a mistyped one, or a known one in another unit.
#pragma once

#include <string>
#include <string_view>

#include "parts/part.hpp"

namespace beamfork {

/// "'focal_length_cm' of 'Club refractor' has no effect: this value is given in mm, as 'focal_length_mm'". `beside` are keys
/// that the entry may have besides its kind's.
std::string unknown_field_sentence(std::string_view key,
                                   const std::string& part_name,
                                   const PartKind& kind,
                                   std::span<const std::string> beside = {});

/// "'titel' is unknown at the top of the file; did you mean 'title'?"
std::string unknown_key_sentence(std::string_view key,
                                 const std::string& place,
                                 std::span<const std::string> known);

/// A unit in full, as said to the user: "millimetres (mm)"; empty for a plain number.
std::string_view unit_in_words(FieldUnit unit);

}  // namespace beamfork
