// Words for what hangs on places of glass that nobody stated: it is told as a note, with what to measure.
#pragma once

#include <string>

#include "study/findings/finding_scope.hpp"

namespace beamfork {

/// "if the glass of My head stands where the stated light path puts it", or "where it usually does".
std::string where_glass_is_taken(const FindingScope& scope, std::size_t part);

/// How to measure it, and where the result goes.
std::string measure_from_seat();
std::string measure_from_front();
/// Both of them, for what hangs on the whole inside.
std::string measure_inside();

}  // namespace beamfork
