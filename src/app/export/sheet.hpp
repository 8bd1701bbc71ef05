// `beamfork sheet`: the printable page, written whole or not at all.
#pragma once

#include "app/commands/tasks.hpp"
#include "document/document.hpp"

namespace beamfork {

/// Studies the setup, seeks its cures and writes the page. Errors: those of make_report and replace_file.
Result<void> write_sheet(const Document& document, const MakeSheet& command);

}  // namespace beamfork
