// The [[tour]] entries of a setup file. Used by setup_reader.cpp alone.
#pragma once

#include "document/read_entry.hpp"
#include "document/tour.hpp"

namespace beamfork {

/// All of them. Errors: a wrong type, a quote that is no known value, a view that there is not, two tours of one name.
Result<std::vector<Tour>> read_tours(Reading& reading, const toml::node& node);

}  // namespace beamfork
