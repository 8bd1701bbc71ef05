// `check`'s section on what each eye sees.
#pragma once

#include "app/check/check_sections.hpp"

namespace beamfork {

Json sight_view_json(const Setup& setup, const Report& report);
Json sight_view_eye_json(const Setup& setup, const Report& report, std::size_t side);
std::string sight_view_text(const Setup& setup, const Report& report);
std::string sight_view_line(const Setup& setup, const Report& report);

}  // namespace beamfork
