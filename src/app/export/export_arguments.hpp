// An export that the window asks for, as the words of the command that does it.
#pragma once

#include <string>
#include <vector>

#include "ui/export/export_order.hpp"

namespace beamfork {

/// Without the program's own name; `setup_file` holds the setup as it is in the window.
std::vector<std::string> export_arguments(const ExportOrder& order, const std::string& setup_file);

}  // namespace beamfork
