// Why an edit is refused, in the words that stand on screen: a field by its label, not by its key in the file.
#pragma once

#include <optional>
#include <string>

#include "document/edit.hpp"

namespace beamfork {

/// Asks apply() and drops what it makes. Nothing: the edit is taken. "“Entry leg” must be from 0 to 200, not 300"
std::optional<std::string> refusal(const Document& document, const Edit& edit);

}  // namespace beamfork
