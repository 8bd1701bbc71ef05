// `beamfork measure`: a home measurement worked out on the command line, as text or as JSON.
#pragma once

#include <string>

#include "app/commands/tasks.hpp"
#include "base/error.hpp"

namespace beamfork {

/// Without a name: all measurements with their readings and steps. Without readings: those of the one
/// named. Errors: an unknown name or reading, and those of evaluate().
Result<std::string> home_measurement_text(const MeasureAtHome& command);

}  // namespace beamfork
