// Fit as `check` tells it.
#pragma once

#include "app/check_sections.hpp"

namespace beamfork {

Json fit_json(const Setup& setup, const Report& report);
std::string fit_text(const Setup& setup, const Report& report);

}  // namespace beamfork
