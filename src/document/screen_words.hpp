// Fields as they are called on screen ("Entry leg"), where files and the parts' own sentences use keys ("entry_leg_mm").
#pragma once

#include <string>
#include <string_view>

#include "parts/part.hpp"

namespace beamfork {

/// The part's field with that key; null when its kind has none.
const FieldInfo* field_named(const PartBody& part, std::string_view key);

/// A sentence about that part with every key in it replaced by the field's label, and plus_minus by ±. A key that is
/// an ordinary word ("glass") is taken for one unless it begins the sentence.
std::string in_screen_words(const PartBody& part, std::string_view sentence);

}  // namespace beamfork
