// `beamfork model`: the train as a glTF file, written whole or not at all.
#pragma once

#include "app/commands/tasks.hpp"
#include "document/document.hpp"

namespace beamfork {

/// Errors: those of make_report and replace_file.
Result<void> write_model(const Document& document, const MakeModel& command);

}  // namespace beamfork
