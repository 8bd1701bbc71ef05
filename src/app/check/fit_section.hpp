// Fit as `check` tells it.
#pragma once

#include "app/check/check_sections.hpp"

namespace beamfork {

/// How the image stands in one eye.
Json orientation_json(const Setup& setup, const Report& report, std::size_t side);
Json fit_json(const Setup& setup, const Report& report);
std::string fit_text(const Setup& setup, const Report& report);
std::string fit_line(const Setup& setup, const Report& report);

}  // namespace beamfork
