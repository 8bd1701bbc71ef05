// The tours that come with the program, worded for one setup: a step is left out or says something else where the
// setup lacks the part or does not have the trouble it is about.
#pragma once

#include <vector>

#include "document/document.hpp"

namespace beamfork {

struct Report;

/// The document's own tours, then those built in whose names it does not use.
std::vector<Tour> all_tours(const Document& document, const Report& report);

/// Every caption can be filled with that setup's quotes.
std::vector<Tour> built_in_tours(const Setup& setup, const Report& report);

}  // namespace beamfork
